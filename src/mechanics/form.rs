//! What a setup is made of, so that a form can be drawn for it. The fields are read off the setup's own type, and what
//! is said of each off the mechanic's help, so that neither is written twice.

use std::collections::{BTreeMap, BTreeSet};

use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::{Map, Value};
use serde_reflection::{ContainerFormat, Error, Format, Named, Registry, Samples, Tracer, TracerConfig, VariantFormat};

use crate::diag::{Hinted, Trouble};
use crate::kit::file::to_ron;
use crate::limits;

/// A field of a setup.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FormField {
    /// Its name, as it stands in the kit file.
    pub name: String,
    /// What the mechanic's help says of it; may be empty.
    pub help: String,
    /// What it holds.
    pub shape: Shape,
}

/// What a field holds.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Shape {
    /// Yes or no.
    Switch,
    /// A text.
    Text,
    /// One letter.
    Letter,
    /// A whole number, from and to.
    Whole(i64, i64),
    /// A number.
    Number,
    /// One of several, each perhaps with something of its own.
    Choice(Vec<Choice>),
    /// Any number of the same.
    List(Box<Self>),
    /// Several fields together.
    Group(Vec<FormField>),
    /// Something or nothing.
    Maybe(Box<Self>),
}

/// One of several that a field can be.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Choice {
    /// Its name, as it stands in the kit file.
    pub name: String,
    /// What it holds besides its name.
    pub inside: Option<Shape>,
}

impl Choice {
    /// The choice as data, with nothing filled in.
    #[must_use]
    pub fn blank(&self) -> Value {
        match &self.inside {
            None => Value::String(self.name.clone()),
            Some(inside) => Value::Object(Map::from_iter([(self.name.clone(), inside.blank())])),
        }
    }

    /// Whether some data is this choice.
    #[must_use]
    pub fn is(&self, value: &Value) -> bool {
        match (&self.inside, value) {
            (None, Value::String(name)) => *name == self.name,
            (Some(_), Value::Object(fields)) => fields.len() == 1 && fields.contains_key(&self.name),
            _ => false,
        }
    }
}

impl Shape {
    /// Data of this shape with nothing filled in: what a new entry of a list starts from.
    #[must_use]
    pub fn blank(&self) -> Value {
        match self {
            Self::Switch => Value::Bool(false),
            Self::Text => Value::String(String::new()),
            Self::Letter => Value::String("A".into()),
            Self::Whole(least, most) => Value::from(0.clamp(*least, *most)),
            Self::Number => Value::from(0.0),
            Self::Choice(choices) => choices.first().map_or(Value::Null, Choice::blank),
            Self::List(_) => Value::Array(Vec::new()),
            Self::Group(fields) => {
                Value::Object(fields.iter().map(|field| (field.name.clone(), field.shape.blank())).collect())
            }
            Self::Maybe(_) => Value::Null,
        }
    }
}

/// The fields of a setup's type, in their order.
///
/// # Errors
/// When the type holds what no form can show.
pub(super) fn fields<S: Serialize + DeserializeOwned + Default>(help: &str) -> Hinted<Vec<FormField>> {
    let (whole, registry) = traced::<S>()?;
    match shape(&whole, &registry, 0)? {
        Shape::Group(mut fields) => {
            let told = told(help);
            for field in &mut fields {
                field.help = told.get(&field.name).cloned().unwrap_or_default();
            }
            Ok(fields)
        }
        _ => Err(Trouble::new("this setup has no form: it is no group of fields")),
    }
}

/// The format of a type, and of all types in it.
fn traced<S: Serialize + DeserializeOwned + Default>() -> Hinted<(Format, Registry)> {
    let untraced = |error: Error| Trouble::new(format!("this setup has no form: {error}"));
    let mut enums: BTreeSet<String> = BTreeSet::new();
    for _ in 0..limits::RON_DEPTH {
        // The default gives samples of types that not every value fits.
        let mut samples = Samples::new();
        let mut tracer = Tracer::new(TracerConfig::default().is_human_readable(true));
        tracer.trace_value(&mut samples, &S::default()).map_err(untraced)?;
        // Each pass takes one more variant of every enum.
        let whole = loop {
            let (whole, _) = tracer.trace_type_once::<S>(&samples).map_err(untraced)?;
            let open = enums.iter().filter(|name| tracer.check_incomplete_enum(name).is_some()).count();
            if open == 0 {
                break whole;
            }
        };
        match tracer.registry() {
            Ok(registry) => return Ok((whole, registry)),
            // Enums are told by name only here.
            Err(Error::MissingVariants(names)) => enums.extend(names),
            Err(error) => return Err(untraced(error)),
        }
    }
    Err(Trouble::new("this setup has no form: it nests without end"))
}

fn shape(format: &Format, registry: &Registry, depth: usize) -> Hinted<Shape> {
    if depth > limits::RON_DEPTH {
        return Err(Trouble::new("this setup has no form: it nests without end"));
    }
    let inner = |format: &Format| shape(format, registry, depth + 1);
    let group = |fields: &[Named<Format>]| -> Hinted<Shape> {
        let field = |named: &Named<Format>| {
            Ok(FormField { name: named.name.clone(), help: String::new(), shape: inner(&named.value)? })
        };
        Ok(Shape::Group(fields.iter().map(field).collect::<Hinted<_>>()?))
    };
    match format {
        Format::Bool => Ok(Shape::Switch),
        Format::Str => Ok(Shape::Text),
        Format::Char => Ok(Shape::Letter),
        Format::U8 => Ok(Shape::Whole(0, i64::from(u8::MAX))),
        Format::U16 => Ok(Shape::Whole(0, i64::from(u16::MAX))),
        Format::U32 | Format::U64 => Ok(Shape::Whole(0, i64::from(u32::MAX))),
        Format::I8 => Ok(Shape::Whole(i64::from(i8::MIN), i64::from(i8::MAX))),
        Format::I16 => Ok(Shape::Whole(i64::from(i16::MIN), i64::from(i16::MAX))),
        Format::I32 | Format::I64 => Ok(Shape::Whole(i64::from(i32::MIN), i64::from(i32::MAX))),
        Format::F32 | Format::F64 => Ok(Shape::Number),
        Format::Option(format) => Ok(Shape::Maybe(Box::new(inner(format)?))),
        Format::Seq(format) => Ok(Shape::List(Box::new(inner(format)?))),
        Format::TypeName(name) => match registry.get(name) {
            Some(ContainerFormat::NewTypeStruct(format)) => inner(format),
            Some(ContainerFormat::Struct(fields)) => group(fields),
            Some(ContainerFormat::Enum(variants)) => {
                let choice = |named: &Named<VariantFormat>| {
                    let inside = match &named.value {
                        VariantFormat::Unit => None,
                        VariantFormat::NewType(format) => Some(inner(format)?),
                        VariantFormat::Struct(fields) => Some(group(fields)?),
                        other => return Err(formless(other)),
                    };
                    Ok(Choice { name: named.name.clone(), inside })
                };
                Ok(Shape::Choice(variants.values().map(choice).collect::<Hinted<_>>()?))
            }
            other => Err(formless(&other)),
        },
        other => Err(formless(other)),
    }
}

fn formless(what: &dyn std::fmt::Debug) -> Trouble {
    Trouble::new(format!("this setup has no form: {what:?} cannot be shown"))
}

/// What a help text says of each field, under its heading `Setup`: entries begin with the names, in backticks.
fn told(help: &str) -> BTreeMap<String, String> {
    let setup = help.split("## ").find_map(|part| part.strip_prefix("Setup\n")).unwrap_or_default();
    let mut told: BTreeMap<String, String> = BTreeMap::new();
    let mut names: Vec<String> = Vec::new();
    for line in setup.lines() {
        let mut rest = line.trim();
        if let Some(entry) = line.strip_prefix("- ") {
            let (head, body) = entry.split_once(": ").unwrap_or((entry, ""));
            names = head.split('`').skip(1).step_by(2).map(str::to_owned).collect();
            rest = body;
        }
        for name in &names {
            let text = told.entry(name.clone()).or_default();
            if !text.is_empty() && !rest.is_empty() {
                text.push(' ');
            }
            text.push_str(&rest.replace('`', ""));
        }
    }
    for text in told.values_mut() {
        *text = crate::script::capital(text);
    }
    told
}

/// A setup's RON text with the fields of `new` that say something else than in `old`; the rest stays as it was
/// written, comments and layout too.
///
/// # Errors
/// When a setup cannot be written as data.
pub(super) fn written<S: Serialize>(ron: &str, old: &S, new: &S) -> Hinted<String> {
    let data = |setup: &S| {
        serde_json::to_value(setup).map_err(|error| Trouble::new(format!("the setup cannot be written: {error}")))
    };
    let (Value::Object(old), Value::Object(new_data)) = (data(old)?, data(new)?) else {
        return Err(Trouble::new("the setup is no group of fields"));
    };
    let full = to_ron(new)?;
    let mut ron = ron.to_owned();
    for (name, span) in crate::kit::ron_text::fields(&full) {
        if old.get(&name) != new_data.get(&name) {
            ron = crate::kit::ron_text::with_field(&ron, &name, full.get(span).unwrap_or_default());
        }
    }
    Ok(ron)
}
