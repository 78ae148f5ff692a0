//! Messages as the program carries them: keys beside keys and messages beside messages, which compress to a fifth less
//! than each key before its message. Neighbouring keys begin with the same words, so each tells only how many.

use super::Texts;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// Ends a rest of a key and a message; no text of ours has this character.
const END: char = '\0';

/// A table of messages to be stored.
#[derive(Serialize, Deserialize)]
pub(super) struct Packed {
    /// How many words each key has in common with the key before it.
    shared: Vec<u8>,
    /// What follows them in each key.
    rests: String,
    messages: String,
}

/// What is stored is no table of messages: as many keys as messages are needed, each key after the one before it.
#[derive(Debug, thiserror::Error)]
#[error("messages and their keys do not fit together")]
pub(super) struct Unfit;

impl From<Texts> for Packed {
    fn from(texts: Texts) -> Self {
        let mut packed = Self { shared: Vec::new(), rests: String::new(), messages: String::new() };
        let mut before = "";
        for (key, message) in &texts.0 {
            let shared =
                words(before).zip(words(key)).take_while(|(one, other)| one == other).take(u8::MAX.into());
            let (count, length) =
                shared.fold((0, 0), |(count, length), (word, _)| (count + 1, length + word.len()));
            packed.shared.push(count);
            packed.rests.extend([&key[length..], END.encode_utf8(&mut [0; 4])]);
            packed.messages.extend([message.as_str(), END.encode_utf8(&mut [0; 4])]);
            before = key;
        }
        packed
    }
}

impl TryFrom<Packed> for Texts {
    type Error = Unfit;

    fn try_from(packed: Packed) -> Result<Self, Unfit> {
        let count = packed.shared.len();
        let fits =
            |text: &str| text.matches(END).count() == count && (text.is_empty() || text.ends_with(END));
        if !fits(&packed.rests) || !fits(&packed.messages) {
            return Err(Unfit);
        }
        let mut texts = BTreeMap::new();
        let mut key = String::new();
        let each = packed.rests.split_terminator(END).zip(packed.messages.split_terminator(END));
        for (shared, (rest, message)) in packed.shared.into_iter().zip(each) {
            let kept = words(&key).take(shared.into()).map(str::len).sum();
            key.truncate(kept);
            key.push_str(rest);
            texts.insert(key.clone(), message.to_owned());
        }
        if texts.len() == count { Ok(Self(texts)) } else { Err(Unfit) }
    }
}

/// The words of a key, each with the stop or hyphen behind it.
fn words(key: &str) -> impl Iterator<Item = &str> {
    key.split_inclusive(['.', '-'])
}

#[cfg(test)]
mod tests {
    use super::*;

    fn table(of: &[(&str, &str)]) -> Texts {
        Texts(of.iter().map(|(key, message)| ((*key).into(), (*message).into())).collect())
    }

    #[test]
    fn messages_are_what_they_were_and_keys_tell_what_is_new() {
        let texts = table(&[
            ("walk.wait", "Wait"),
            ("walk.wait-long", "Wait {n} hours"),
            ("walk.wait-long.why", "Il sèche"),
            ("wood.ash", ""),
        ]);
        let packed = Packed::from(texts.clone());
        assert_eq!(packed.shared, [0, 1, 2, 0]);
        assert_eq!(packed.rests, "walk.wait\0wait-long\0long.why\0wood.ash\0");
        assert_eq!(Texts::try_from(packed).unwrap(), texts);
        assert_eq!(Texts::try_from(Packed::from(Texts::empty())).unwrap(), Texts::empty());
    }

    #[test]
    fn what_does_not_fit_together_is_refused() {
        for (shared, rests, messages) in [
            (vec![0, 0], "a\0b\0", "A\0"),
            (vec![0], "a\0b\0", "A\0"),
            (vec![0], "a", "A\0"),
            (vec![0, 0], "a\0a\0", "A\0A\0"),
        ] {
            let packed = Packed { shared, rests: rests.into(), messages: messages.into() };
            assert!(Texts::try_from(packed).is_err());
        }
    }
}
