//! What a package holds.

use super::xml::{DECLARATION, element, empty};

/// Its path, at the top of the package.
pub(super) const MANIFEST: &str = "imsmanifest.xml";

/// The path of an item.
pub(super) fn path(name: &str) -> String {
    format!("items/{name}.xml")
}

/// The manifest of items by their names.
pub(super) fn manifest(names: &[String]) -> String {
    let resource = |name: &String| {
        let path = path(name);
        let said = [("identifier", name.as_str()), ("type", "imsqti_item_xmlv3p0"), ("href", &path)];
        element("resource", &said, &empty("file", &[("href", &path)]))
    };
    let schema = element("schema", &[], "QTI Package") + &element("schemaversion", &[], "3.0.0");
    let inside = [
        element("metadata", &[], &schema),
        empty("organizations", &[]),
        element("resources", &[], &names.iter().map(resource).collect::<String>()),
    ];
    let said =
        [("xmlns", "http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1"), ("identifier", "stepboard-cards")];
    format!("{DECLARATION}{}", element("manifest", &said, &inside.concat()))
}
