//! The competency list as a framework of CASE 1.1 (1EdTech Competencies and Academic Standards Exchange): what a GET of
//! CFPackages answers with.
//!
//! Names of members and kinds of associations stand in public descriptions of the standard; the order of criteria as items
//! below their competency is our own choice.

use super::{Home, uuid5};
use crate::content::{Competency, Content, ENGLISH};
use serde_json::{Value, json};

/// The path of the standard's service, which the addresses of its parts have.
const SERVICE: [&str; 3] = ["ims", "case", "v1p1"];

/// The framework, as JSON; `changed` is the moment of its last change, as ISO 8601 text in universal time. Whatever keeps its
/// words keeps its name from version to version.
#[must_use]
pub fn framework(content: &Content, home: &Home, creator: &str, changed: &str) -> Value {
    let texts = content.texts(ENGLISH);
    let case = Case { content, home, changed };
    let title = texts.get("case.title");
    let document = case.node("CFDocuments", "competencies", title);
    let (mut items, mut links) = (Vec::new(), Vec::new());
    for (place, one) in content.competencies.iter().enumerate() {
        let item = case.competency(one);
        items.push(case.item(&item, "Competency", &one.slug, texts.get(&format!("may.{}", one.slug))));
        links.push(case.link(&item, "isChildOf", &document, Some(place + 1)));
        for (nth, criterion) in one.criteria.iter().enumerate() {
            let below =
                case.node("CFItems", &criterion.id, texts.get(&format!("criterion.{}", criterion.id)));
            let kind = if criterion.critical { "Critical criterion" } else { "Criterion" };
            items.push(case.item(&below, kind, &criterion.id, ""));
            links.push(case.link(&below, "isChildOf", &item, Some(nth + 1)));
        }
        let before = one.needs.iter().chain(&one.needs_knowledge);
        for needed in before.filter_map(|slug| content.competency(slug)) {
            links.push(case.link(&case.competency(needed), "precedes", &item, None));
        }
    }
    json!({
        "CFDocument": {
            "identifier": document.id, "uri": document.uri, "title": title, "creator": creator,
            "lastChangeDateTime": changed, "adoptionStatus": "Adopted", "language": ENGLISH,
            "description": texts.get("case.description"),
        },
        "CFItems": items,
        "CFAssociations": links,
    })
}

struct Case<'a> {
    content: &'a Content,
    home: &'a Home,
    changed: &'a str,
}

/// What can be linked to.
struct Node {
    id: String,
    uri: String,
    title: String,
}

impl Case<'_> {
    fn uri(&self, list: &str, id: &str) -> String {
        let [ims, case, version] = SERVICE;
        self.home.below(&[ims, case, version, list, id])
    }

    /// A node that is named by its slug and its words: other words make another node.
    fn node(&self, list: &str, slug: &str, title: &str) -> Node {
        let id = uuid5(&self.home.below(&[list, slug, title])).to_string();
        Node { uri: self.uri(list, &id), id, title: title.to_owned() }
    }

    fn competency(&self, one: &Competency) -> Node {
        self.node("CFItems", &one.slug, self.content.texts(ENGLISH).get(&format!("competency.{}", one.slug)))
    }

    fn item(&self, node: &Node, kind: &str, code: &str, notes: &str) -> Value {
        let mut item = json!({
            "identifier": node.id, "uri": node.uri, "fullStatement": node.title, "humanCodingScheme": code,
            "CFItemType": kind, "language": ENGLISH, "lastChangeDateTime": self.changed,
        });
        if let (false, Value::Object(members)) = (notes.is_empty(), &mut item) {
            members.insert("notes".to_owned(), json!(notes));
        }
        item
    }

    fn link(&self, from: &Node, kind: &str, to: &Node, number: Option<usize>) -> Value {
        let id = uuid5(&self.home.below(&["CFAssociations", &from.id, kind, &to.id])).to_string();
        let end = |node: &Node| json!({ "title": node.title, "identifier": node.id, "uri": node.uri });
        let mut link = json!({
            "identifier": id, "uri": self.uri("CFAssociations", &id), "associationType": kind,
            "originNodeURI": end(from), "destinationNodeURI": end(to), "lastChangeDateTime": self.changed,
        });
        if let (Some(number), Value::Object(members)) = (number, &mut link) {
            members.insert("sequenceNumber".to_owned(), json!(number));
        }
        link
    }
}
