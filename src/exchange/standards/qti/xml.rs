//! XML written: elements, attributes and text with what must be escaped (XML 1.0, sections 2.2 and 2.4).

pub(super) const DECLARATION: &str = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";

/// An element with what stands inside of it, which is XML already.
pub(super) fn element(name: &str, attributes: &[(&str, &str)], inside: &str) -> String {
    format!("<{name}{}>{inside}</{name}>\n", told(attributes))
}

/// An element with nothing inside.
pub(super) fn empty(name: &str, attributes: &[(&str, &str)]) -> String {
    format!("<{name}{}/>\n", told(attributes))
}

fn told(attributes: &[(&str, &str)]) -> String {
    attributes.iter().map(|(name, value)| format!(" {name}=\"{}\"", text(value))).collect()
}

/// Text with nothing in it that is read as markup; characters that XML cannot hold are left out.
pub(super) fn text(text: &str) -> String {
    let mut escaped = String::with_capacity(text.len());
    for character in text.chars() {
        match character {
            '&' => escaped.push_str("&amp;"),
            '<' => escaped.push_str("&lt;"),
            '>' => escaped.push_str("&gt;"),
            '"' => escaped.push_str("&quot;"),
            '\t' | '\n' | '\r' => escaped.push(' '),
            '\0'..='\u{1f}' | '\u{fffe}' | '\u{ffff}' => {}
            other => escaped.push(other),
        }
    }
    escaped
}
