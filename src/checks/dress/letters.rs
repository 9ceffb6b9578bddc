use crate::checks::Draft;
use crate::diag::{Anchor, Severity};
use crate::face::Role;
use crate::print::Press;
use crate::theme::Loaded;

/// What every kit prints: letters, digits, the signs of ordinary English text, and those that pages of ours use.
const COMMON: &str = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789.,:;!?'\"()-–—‘’“”&/%+=·…×";

/// Letters beyond [`COMMON`] of each language that a theme may claim (the main exemplar characters of the Unicode
/// CLDR, from memory).
const LANGUAGES: &[(&str, &str, &str)] = &[
    ("en", "English", ""),
    ("cs", "Czech", "áčďéěíňóřšťúůýžÁČĎÉĚÍŇÓŘŠŤÚŮÝŽ„"),
    ("da", "Danish", "æøåÆØÅ"),
    ("de", "German", "äöüßÄÖÜ„‚"),
    ("es", "Spanish", "áéíñóúüÁÉÍÑÓÚÜ¿¡«»"),
    ("fi", "Finnish", "äöåÄÖÅ"),
    ("fr", "French", "àâæçéèêëîïôœùûüÿÀÂÆÇÉÈÊËÎÏÔŒÙÛÜŸ«»"),
    ("it", "Italian", "àèéìòóùÀÈÉÌÒÓÙ«»"),
    ("nb", "Norwegian", "æøåÆØÅ«»"),
    ("nl", "Dutch", "ëéèïöüËÉÈÏÖÜ"),
    ("pl", "Polish", "ąćęłńóśźżĄĆĘŁŃÓŚŹŻ„"),
    ("pt", "Portuguese", "ãáâàçéêíõóôúÃÁÂÀÇÉÊÍÕÓÔÚ«»"),
    ("sv", "Swedish", "åäöÅÄÖ"),
];

/// Characters of the theme's languages that its lettering cannot write.
pub fn lacking(theme: &Loaded, press: &Press) -> Vec<Draft> {
    let mut drafts = Vec::new();
    let english = ["en".to_owned()];
    let claimed = if theme.theme.languages.is_empty() { &english[..] } else { &theme.theme.languages[..] };
    for code in claimed {
        let Some((_, name, letters)) = LANGUAGES.iter().find(|(known, ..)| known == code) else {
            let known: Vec<&str> = LANGUAGES.iter().map(|(code, ..)| *code).collect();
            let message = format!("the language `{code}` is not known here, so its letters are not looked for");
            let draft = Draft::new(Anchor::Theme, message).severity(Severity::Notes);
            drafts.push(draft.help(format!("the languages are {}", known.join(", "))));
            continue;
        };
        for role in [Role::Text, Role::Display, Role::Hand, Role::Code] {
            let lost: String = press.lacks(role, &format!("{COMMON}{letters}")).into_iter().collect();
            if !lost.is_empty() {
                let message = format!("the lettering of `{}` lacks characters of {name}: {lost}", role.name());
                let draft = Draft::new(Anchor::Theme, message).severity(Severity::Warns);
                drafts.push(draft.help("choose a font that has them, or claim no such language"));
            }
        }
    }
    drafts
}
