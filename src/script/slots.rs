use std::collections::BTreeMap;
use std::fmt;
use std::sync::Arc;

use minijinja::value::{Object, Value};
use minijinja::{AutoEscape, Environment, ErrorKind, UndefinedBehavior, escape_formatter};

use crate::diag::{Hinted, Trouble};
use crate::kit::file::nearest;
use crate::kit::{Kit, WordForms};
use crate::limits;
use crate::script::english::{article, capital, plural, title_case};
use crate::theme::Theme;

/// The words of a kit in its theme: the theme's, then the kit's own in their place.
#[derive(Clone, Debug)]
pub struct Words {
    forms: BTreeMap<String, WordForms>,
    context: Value,
    /// Slots of plain text, and of RON text.
    environments: Arc<[Environment<'static>; 2]>,
    unfilled: Vec<(String, Trouble)>,
}

/// Whether a word holds a slot itself.
fn has_slot(forms: &WordForms) -> bool {
    forms.one.contains("{{") || forms.many.contains("{{")
}

impl Words {
    /// The words of `kit` in `theme`.
    #[must_use]
    pub fn new(theme: &Theme, kit: &Kit) -> Self {
        let mut forms = theme.words.clone();
        let (plain, slotted): (Vec<_>, Vec<_>) = kit.words.iter().partition(|(_, forms)| !has_slot(forms));
        forms.extend(plain.into_iter().map(|(name, forms)| (name.clone(), forms.clone())));
        let mut words = Self::of(forms);
        // A word of the kit's own may hold slots, filled from words that hold none: so none can hold itself.
        let mut unfilled = Vec::new();
        let mut filled = Vec::new();
        for (name, forms) in slotted {
            let forms = words.fill_forms(forms).unwrap_or_else(|trouble| {
                unfilled.push((name.clone(), trouble));
                forms.clone()
            });
            filled.push((name.clone(), forms));
        }
        if !filled.is_empty() {
            let mut forms = words.forms;
            forms.extend(filled);
            words = Self::of(forms);
        }
        Self { unfilled, ..words }
    }

    fn of(forms: BTreeMap<String, WordForms>) -> Self {
        // By way of a map: collected straight into a `Value`, the pairs would become a list without names.
        let context: BTreeMap<String, Value> =
            forms.iter().map(|(name, forms)| (name.clone(), Value::from_object(Word(forms.clone())))).collect();
        let environments = [AutoEscape::None, AutoEscape::Custom(RON.into())].map(environment);
        Self { forms, context: Value::from(context), environments: Arc::new(environments), unfilled: Vec::new() }
    }

    fn fill_forms(&self, forms: &WordForms) -> Hinted<WordForms> {
        Ok(WordForms { one: self.fill(&forms.one)?, many: self.fill(&forms.many)?, article: forms.article.clone() })
    }

    /// Words of the kit's own that hold a slot which no word fills, by name.
    #[must_use]
    pub fn unfilled(&self) -> &[(String, Trouble)] {
        &self.unfilled
    }

    /// All words by name.
    #[must_use]
    pub const fn forms(&self) -> &BTreeMap<String, WordForms> {
        &self.forms
    }

    /// Fills the slots of a text.
    ///
    /// # Errors
    /// When a slot has no word, a filter is unknown, or the slot is not closed.
    pub fn fill(&self, text: &str) -> Hinted<String> {
        if !text.contains("{{") && !text.contains("{%") {
            return Ok(text.to_owned());
        }
        let [plain, _] = &*self.environments;
        self.render(text, plain)
    }

    /// Fills the slots of RON text: a quotation mark in a word cannot end the string it stands in.
    ///
    /// # Errors
    /// As [`Words::fill`].
    pub fn fill_ron(&self, ron: &str) -> Hinted<String> {
        if !ron.contains("{{") {
            return Ok(ron.to_owned());
        }
        let [_, escaping] = &*self.environments;
        self.render(ron, escaping)
    }

    fn render(&self, text: &str, env: &Environment<'static>) -> Hinted<String> {
        if text.chars().count() > limits::TEXT_CHARS.saturating_mul(4) {
            return Err(Trouble::new("the text is too long for a kit").hint("split it"));
        }
        if text.contains("{%") {
            return Err(Trouble::new("a text may hold slots, not commands").hint("write {{ word }} only"));
        }
        let template = env.template_from_str(text).map_err(|error| self.explain(&error, text))?;
        let filled = template.render(self.context.clone()).map_err(|error| self.explain(&error, text))?;
        if filled.len() > limits::FILLED_BYTES {
            return Err(Trouble::new("the filled text is too long for a kit").hint("shorten the words or the text"));
        }
        Ok(filled)
    }

    /// Says which slot failed, and the nearest word.
    fn explain(&self, error: &minijinja::Error, text: &str) -> Trouble {
        let slot = error.range().and_then(|range| text.get(range)).unwrap_or_default().trim().to_owned();
        let known: Vec<&str> = self.forms.keys().map(String::as_str).collect();
        match error.kind() {
            ErrorKind::UndefinedError => {
                let slot = error.range().map_or_else(String::new, |range| word_of(text, range.start));
                let mut trouble = Trouble::new(format!("the slot `{slot}` has no word"));
                if let Some(near) = nearest(&slot, &known) {
                    trouble = trouble.hint(format!("did you mean `{near}`?"));
                }
                trouble.hint(format!("add the word to the kit, or use one of: {}", known.join(", ")))
            }
            ErrorKind::UnknownFilter => Trouble::new(format!("there is no form `{slot}`")).hint(format!(
                "the forms are {}",
                FILTERS.iter().map(|(name, _)| *name).collect::<Vec<_>>().join(", ")
            )),
            _ => Trouble::new(format!("this slot cannot be read: {error}"))
                .hint("write it as {{ word }} or {{ word | plural }}"),
        }
    }
}

/// The word of the slot that stands around byte `at`: "owl" of `{{ owl | plural }}`.
fn word_of(text: &str, at: usize) -> String {
    let before = text.get(..at).unwrap_or(text);
    let start = before.rfind("{{").map_or(0, |open| open + 2);
    let slot = text.get(start..).unwrap_or_default();
    slot.split(['|', '}']).next().unwrap_or_default().trim().to_owned()
}

/// The escape format for text inside RON strings.
const RON: &str = "ron";

/// Makes one form of a word.
type Form = fn(&WordForms) -> String;

/// The forms that a slot can ask for, and what each gives.
const FILTERS: &[(&str, Form)] = &[
    ("plural", plural),
    ("a", |forms| format!("{} {}", article(forms), forms.one)),
    ("the", |forms| format!("the {}", forms.one)),
    ("cap", |forms| capital(&forms.one)),
    ("title", |forms| title_case(&forms.one)),
    ("caps", |forms| forms.one.to_uppercase()),
];

fn environment(escape: AutoEscape) -> Environment<'static> {
    let mut env = Environment::empty();
    env.set_undefined_behavior(UndefinedBehavior::Strict);
    env.set_auto_escape_callback(move |_| escape.clone());
    env.set_formatter(|out, state, value| {
        if value.is_undefined() {
            return Err(minijinja::Error::from(ErrorKind::UndefinedError));
        }
        if *state.auto_escape() == AutoEscape::Custom(RON.into()) {
            let text = value.to_string().replace('\\', "\\\\").replace('"', "\\\"");
            return out.write_str(&text).map_err(|_| minijinja::Error::from(ErrorKind::WriteFailure));
        }
        escape_formatter(out, state, value)
    });
    for (name, form) in FILTERS {
        let form = *form;
        env.add_filter(*name, move |value: Value| match value.downcast_object_ref::<Word>() {
            Some(word) => Ok(Value::from(form(&word.0))),
            // Strict undefined values are refused where they are printed, not where a filter takes them.
            None if value.is_undefined() => Err(minijinja::Error::from(ErrorKind::UndefinedError)),
            // A form of a form: `{{ owl | plural | cap }}`.
            None => Ok(Value::from(form(&WordForms { one: value.to_string(), ..WordForms::default() }))),
        });
    }
    env
}

/// A word as a slot sees it: printed, it is its first form.
#[derive(Debug)]
struct Word(WordForms);

impl Object for Word {
    fn render(self: &Arc<Self>, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0.one)
    }
}
