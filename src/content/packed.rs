//! Messages as the program carries them: the keys once, the messages of each language behind each other in the order of the
//! keys. Neighbouring keys begin with the same words, so each tells only how many. Nothing of it is taken apart before a
//! message is looked for, so that a language that nobody reads costs no time.

use super::Texts;
use serde::{Deserialize, Deserializer, Serialize, Serializer, de};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::{Arc, OnceLock};

/// Ends a rest of a key and a message; no text of ours has this character.
const END: char = '\0';

/// The messages of all languages to be stored.
#[derive(Serialize, Deserialize)]
struct Packed {
    /// How many words each key has in common with the key before it.
    shared: Vec<u8>,
    /// What follows them in each key.
    rests: String,
    /// The messages of each language.
    messages: BTreeMap<String, String>,
}

/// Texts that follow on each other.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
struct Lines {
    text: String,
    /// Where each ends.
    ends: Vec<usize>,
}

impl Lines {
    /// Each that stands in a text before an [`END`].
    fn ended(text: &str) -> Self {
        let mut lines = Self::default();
        text.split_terminator(END).for_each(|line| lines.push("", line));
        lines
    }

    /// One more, of two pieces.
    fn push(&mut self, begin: &str, rest: &str) {
        self.text.extend([begin, rest]);
        self.ends.push(self.text.len());
    }

    fn get(&self, at: usize) -> Option<&str> {
        let start = at.checked_sub(1).map_or(Some(0), |before| self.ends.get(before).copied())?;
        self.text.get(start..*self.ends.get(at)?)
    }

    fn iter(&self) -> impl Iterator<Item = &str> {
        (0..self.ends.len()).filter_map(|at| self.get(at))
    }
}

/// The keys of all messages, taken apart when the first is looked for.
#[derive(Debug, Default)]
struct Keys {
    shared: Vec<u8>,
    rests: String,
    whole: OnceLock<Lines>,
}

impl Keys {
    fn whole(&self) -> &Lines {
        self.whole.get_or_init(|| {
            let mut keys = Lines::default();
            let mut key = String::new();
            for (shared, rest) in self.shared.iter().zip(self.rests.split_terminator(END)) {
                let kept = words(&key).take((*shared).into()).map(str::len).sum();
                key.truncate(kept);
                key.push_str(rest);
                keys.push(&key, "");
            }
            keys
        })
    }
}

/// The messages of one language as they ship.
#[derive(Debug, Clone, Default)]
pub(super) struct Table {
    keys: Arc<Keys>,
    messages: Arc<Messages>,
}

#[derive(Debug, Default)]
struct Messages {
    packed: String,
    apart: OnceLock<Lines>,
}

impl Table {
    /// The message of a key; none where this language has none for a key of another.
    pub(super) fn find(&self, key: &str) -> Option<&str> {
        let keys = self.keys.whole();
        // Keys are told in their order.
        let (mut low, mut high) = (0, keys.ends.len());
        while low < high {
            let middle = low.midpoint(high);
            match keys.get(middle)?.cmp(key) {
                std::cmp::Ordering::Less => low = middle + 1,
                std::cmp::Ordering::Equal => {
                    return self.messages().get(middle).filter(|found| !found.is_empty());
                }
                std::cmp::Ordering::Greater => high = middle,
            }
        }
        None
    }

    /// All messages with their keys, in the order of the keys.
    pub(super) fn iter(&self) -> impl Iterator<Item = (&str, &str)> {
        self.keys.whole().iter().zip(self.messages().iter()).filter(|(_, message)| !message.is_empty())
    }

    fn messages(&self) -> &Lines {
        self.messages.apart.get_or_init(|| Lines::ended(&self.messages.packed))
    }
}

impl PartialEq for Table {
    fn eq(&self, other: &Self) -> bool {
        Arc::ptr_eq(&self.messages, &other.messages) || self.iter().eq(other.iter())
    }
}

impl Eq for Table {}

/// Stores the messages of all languages; nothing stands where one has none for a key, and no message is empty.
pub(super) fn serialize<S: Serializer>(texts: &BTreeMap<String, Texts>, to: S) -> Result<S::Ok, S::Error> {
    let languages: BTreeMap<_, _> = texts.iter().map(|(language, texts)| (language, texts.all())).collect();
    let keys: BTreeSet<&str> = languages.values().flat_map(|texts| texts.keys().copied()).collect();
    let mut packed = Packed { shared: Vec::new(), rests: String::new(), messages: BTreeMap::new() };
    let mut before = "";
    for key in &keys {
        let shared =
            words(before).zip(words(key)).take_while(|(one, other)| one == other).take(u8::MAX.into());
        let (count, length) =
            shared.fold((0, 0), |(count, length), (word, _)| (count + 1, length + word.len()));
        packed.shared.push(count);
        packed.rests.extend([&key[length..], END.encode_utf8(&mut [0; 4])]);
        before = key;
    }
    for (language, texts) in languages {
        let messages = keys.iter().flat_map(|key| [texts.get(key).copied().unwrap_or(""), "\0"]);
        packed.messages.insert(language.clone(), messages.collect());
    }
    packed.serialize(to)
}

/// Reads them.
///
/// # Errors
/// Where there are not as many messages as keys.
pub(super) fn deserialize<'de, D: Deserializer<'de>>(from: D) -> Result<BTreeMap<String, Texts>, D::Error> {
    let Packed { shared, rests, messages } = Packed::deserialize(from)?;
    let count = shared.len();
    let fits = |text: &String| text.matches(END).count() == count && (text.is_empty() || text.ends_with(END));
    if !fits(&rests) || !messages.values().all(fits) {
        return Err(de::Error::custom("messages and their keys do not fit together"));
    }
    let keys = Arc::new(Keys { shared, rests, whole: OnceLock::new() });
    let table = |packed| Table {
        keys: Arc::clone(&keys),
        messages: Arc::new(Messages { packed, apart: OnceLock::new() }),
    };
    Ok(messages.into_iter().map(|(language, packed)| (language, Texts::shipped(table(packed)))).collect())
}

/// The words of a key, each with the stop or hyphen behind it.
fn words(key: &str) -> impl Iterator<Item = &str> {
    key.split_inclusive(['.', '-'])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[derive(Debug, PartialEq, Serialize, Deserialize)]
    struct Holds(#[serde(with = "super")] BTreeMap<String, Texts>);

    fn table(of: &[(&str, &str)]) -> Texts {
        let mut texts = Texts::default();
        of.iter().for_each(|(key, message)| drop(texts.insert(*key, *message)));
        texts
    }

    fn packed(holds: &Holds) -> Packed {
        postcard::from_bytes(&postcard::to_allocvec(holds).unwrap()).unwrap()
    }

    #[test]
    fn messages_are_what_they_were_and_keys_tell_what_is_new() {
        let english = table(&[
            ("walk.wait", "Wait"),
            ("walk.wait-long", "Wait {n} hours"),
            ("walk.wait-long.why", "It dries"),
            ("wood.zebrano", "Striped"),
        ]);
        let french =
            table(&[("walk.wait-long.why", "Il sèche"), ("wood.ash", "frêne"), ("wood.zebrano", "zébrano")]);
        let holds = Holds([("en".into(), english.clone()), ("fr".into(), french)].into());
        let stored = packed(&holds);
        assert_eq!(stored.shared, [0, 1, 2, 0, 1]);
        assert_eq!(stored.rests, "walk.wait\0wait-long\0long.why\0wood.ash\0zebrano\0");
        let Holds(read) = postcard::from_bytes(&postcard::to_allocvec(&holds).unwrap()).unwrap();
        assert_eq!(read["en"].all(), english.all());
        assert_eq!(read["fr"].find("wood.ash"), Some("frêne"));
        assert_eq!(read["fr"].find("walk.wait"), None, "a gap stays one");
        assert_eq!(read["en"].find("wood.ash"), None);
        assert_eq!(read["fr"].all().len(), 3);
        assert_eq!(read["en"].find("walk.waits"), None);
        assert_eq!(read["en"].find(""), None);
        let nothing = Holds([("en".into(), Texts::default())].into());
        let Holds(read) = postcard::from_bytes(&postcard::to_allocvec(&nothing).unwrap()).unwrap();
        assert_eq!(read["en"].all(), BTreeMap::new());
    }

    #[test]
    fn what_does_not_fit_together_is_refused() {
        for (shared, rests, messages) in
            [(vec![0, 0], "a\0b\0", "A\0"), (vec![0], "a\0b\0", "A\0"), (vec![0], "a", "A\0")]
        {
            let messages = [("en".to_owned(), messages.to_owned())].into();
            let bytes = postcard::to_allocvec(&Packed { shared, rests: rests.into(), messages }).unwrap();
            assert!(postcard::from_bytes::<Holds>(&bytes).is_err());
        }
    }
}
