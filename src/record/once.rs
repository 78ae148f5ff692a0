//! An object of JSON in which no member stands twice, at any depth: two readers of such text cannot see two things.

use serde::de::{DeserializeSeed, Error, MapAccess, SeqAccess, Visitor};
use serde::{Deserialize, Deserializer};
use serde_json::{Map, Number, Value};
use std::fmt;

/// Such an object.
pub(super) struct Once(pub(super) Map<String, Value>);

impl<'de> Deserialize<'de> for Once {
    fn deserialize<D: Deserializer<'de>>(reader: D) -> Result<Self, D::Error> {
        match Any.deserialize(reader)? {
            Value::Object(members) => Ok(Self(members)),
            _ => Err(D::Error::custom("no object")),
        }
    }
}

/// Any value in which no member stands twice.
struct Any;

impl<'de> DeserializeSeed<'de> for Any {
    type Value = Value;

    fn deserialize<D: Deserializer<'de>>(self, reader: D) -> Result<Value, D::Error> {
        reader.deserialize_any(self)
    }
}

impl<'de> Visitor<'de> for Any {
    type Value = Value;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("JSON")
    }

    fn visit_unit<E>(self) -> Result<Value, E> {
        Ok(Value::Null)
    }

    fn visit_bool<E>(self, told: bool) -> Result<Value, E> {
        Ok(Value::Bool(told))
    }

    fn visit_u64<E>(self, number: u64) -> Result<Value, E> {
        Ok(Value::Number(number.into()))
    }

    fn visit_i64<E>(self, number: i64) -> Result<Value, E> {
        Ok(Value::Number(number.into()))
    }

    fn visit_f64<E>(self, number: f64) -> Result<Value, E> {
        Ok(Number::from_f64(number).map_or(Value::Null, Value::Number))
    }

    fn visit_str<E>(self, text: &str) -> Result<Value, E> {
        Ok(Value::String(text.to_owned()))
    }

    fn visit_string<E>(self, text: String) -> Result<Value, E> {
        Ok(Value::String(text))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<Value, A::Error> {
        let mut all = Vec::new();
        while let Some(one) = list.next_element_seed(Self)? {
            all.push(one);
        }
        Ok(Value::Array(all))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut object: A) -> Result<Value, A::Error> {
        let mut members = Map::new();
        while let Some(name) = object.next_key::<String>()? {
            let value = object.next_value_seed(Self)?;
            if members.contains_key(&name) {
                return Err(A::Error::custom(format!("`{name}` stands twice")));
            }
            members.insert(name, value);
        }
        Ok(Value::Object(members))
    }
}
