//! Walks a JSON value against the format and notes every fault on the way, instead of stopping at the first.
//!
//! A faulty value is replaced by a harmless one so that the walk can go on; nothing read by a reader that has
//! faults may be used.

use std::collections::BTreeMap;
use std::fmt;

use serde::de::{self, Deserialize, Deserializer, MapAccess, SeqAccess, Visitor};
use serde_json::{Map, Value};

use crate::fault::{Fault, Wrong};

/// Collects faults while a document is read.
#[derive(Debug, Default)]
pub(crate) struct Reader {
    pub(crate) faults: Vec<Fault>,
}

/// The longest text that is read, in bytes: many times the largest day that can be planned.
const TEXT_MAX: usize = 16 << 20;

/// The path of a key inside an object.
pub(crate) fn at(path: &str, key: &str) -> String {
    if path.is_empty() { key.to_owned() } else { format!("{path}.{key}") }
}

impl Reader {
    /// The whole text as one JSON value in which no key stands twice.
    pub(crate) fn parse(&mut self, text: &str) -> Option<Value> {
        if text.len() > TEXT_MAX {
            self.say("", Wrong::TooLong { bytes: text.len(), most: TEXT_MAX });
            return None;
        }
        match serde_json::from_str(text) {
            Ok(Once(value)) => Some(value),
            Err(error) => {
                let (line, column) = (error.line(), error.column());
                let said = error.to_string();
                let tail = format!(" at line {line} column {column}");
                let reason = said.strip_suffix(&tail).unwrap_or(&said).to_owned();
                self.say("", Wrong::NotJson { line, column, reason });
                None
            }
        }
    }

    pub(crate) fn say(&mut self, path: &str, wrong: Wrong) {
        self.faults.push(Fault::new(path, wrong));
    }

    /// An object with all of `must` and nothing outside `must` and `may`.
    pub(crate) fn object<'v>(
        &mut self,
        path: &str,
        value: &'v Value,
        must: &[&str],
        may: &[&str],
    ) -> Option<&'v Map<String, Value>> {
        let Some(map) = value.as_object() else {
            self.wrong_type(path, value, "an object");
            return None;
        };
        for key in map.keys() {
            if !must.contains(&key.as_str()) && !may.contains(&key.as_str()) {
                let known: Vec<&str> = must.iter().chain(may).copied().collect();
                let known = known.join(", ");
                self.say(&at(path, key), Wrong::UnknownKey { known });
            }
        }
        for key in must {
            if !map.contains_key(*key) {
                self.say(&at(path, key), Wrong::Missing);
            }
        }
        Some(map)
    }

    pub(crate) fn format(&mut self, map: &Map<String, Value>, wanted: &'static str) {
        if let Some(value) = map.get("format") {
            let found = self.text("format", Some(value));
            if value.is_string() && found != wanted {
                self.say("format", Wrong::Format { found, wanted });
            }
        }
    }

    /// Reads each entry of a list; an absent list is empty.
    pub(crate) fn list<T>(
        &mut self,
        path: &str,
        value: Option<&Value>,
        mut read: impl FnMut(&mut Reader, &str, &Value) -> T,
    ) -> Vec<T> {
        match value {
            None => Vec::new(),
            Some(Value::Array(entries)) => entries
                .iter()
                .enumerate()
                .map(|(i, entry)| read(self, &format!("{path}[{i}]"), entry))
                .collect(),
            Some(other) => {
                self.wrong_type(path, other, "a list");
                Vec::new()
            }
        }
    }

    /// Whole numbers by name; an absent object is empty.
    pub(crate) fn amounts(&mut self, path: &str, value: Option<&Value>, most: u32) -> BTreeMap<String, u32> {
        match value {
            None => BTreeMap::new(),
            Some(Value::Object(map)) => {
                map.iter().map(|(key, v)| (key.clone(), self.whole(&at(path, key), Some(v), most))).collect()
            }
            Some(other) => {
                self.wrong_type(path, other, "an object");
                BTreeMap::new()
            }
        }
    }

    /// A whole number from 0 to `most`; 0 when absent.
    pub(crate) fn whole(&mut self, path: &str, value: Option<&Value>, most: u32) -> u32 {
        let Some(value) = value else { return 0 };
        let read = value.as_u64().and_then(|n| u32::try_from(n).ok());
        match read {
            Some(n) if n <= most => n,
            _ => {
                self.not_whole(path, value, 0, i64::from(most));
                0
            }
        }
    }

    /// A whole number from `-most` to `most`; 0 when absent.
    pub(crate) fn signed(&mut self, path: &str, value: Option<&Value>, most: i32) -> i32 {
        let Some(value) = value else { return 0 };
        let read = value.as_i64().and_then(|n| i32::try_from(n).ok());
        match read {
            Some(n) if (-most..=most).contains(&n) => n,
            _ => {
                self.not_whole(path, value, i64::from(-most), i64::from(most));
                0
            }
        }
    }

    pub(crate) fn text(&mut self, path: &str, value: Option<&Value>) -> String {
        match value {
            None => String::new(),
            Some(Value::String(text)) => text.clone(),
            Some(other) => {
                self.wrong_type(path, other, "a text");
                String::new()
            }
        }
    }

    pub(crate) fn flag(&mut self, path: &str, value: Option<&Value>) -> bool {
        match value {
            None => false,
            Some(Value::Bool(flag)) => *flag,
            Some(other) => {
                self.wrong_type(path, other, "true or false");
                false
            }
        }
    }

    pub(crate) fn wrong_type(&mut self, path: &str, value: &Value, wanted: &'static str) {
        let found = show(value);
        self.say(path, Wrong::Type { found, wanted });
    }

    fn not_whole(&mut self, path: &str, value: &Value, least: i64, most: i64) {
        let found = show(value);
        self.say(path, Wrong::Whole { found, least, most });
    }
}

/// A JSON value whose objects name each key once. A plain reader keeps the last of two and loses a rule without a word.
struct Once(Value);

impl<'de> Deserialize<'de> for Once {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Once, D::Error> {
        deserializer.deserialize_any(OnceVisitor).map(Once)
    }
}

struct OnceVisitor;

impl<'de> Visitor<'de> for OnceVisitor {
    type Value = Value;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a JSON value")
    }

    fn visit_unit<E: de::Error>(self) -> Result<Value, E> {
        Ok(Value::Null)
    }

    fn visit_bool<E: de::Error>(self, flag: bool) -> Result<Value, E> {
        Ok(flag.into())
    }

    fn visit_u64<E: de::Error>(self, number: u64) -> Result<Value, E> {
        Ok(number.into())
    }

    fn visit_i64<E: de::Error>(self, number: i64) -> Result<Value, E> {
        Ok(number.into())
    }

    fn visit_f64<E: de::Error>(self, number: f64) -> Result<Value, E> {
        Ok(number.into())
    }

    fn visit_str<E: de::Error>(self, text: &str) -> Result<Value, E> {
        Ok(text.into())
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut entries: A) -> Result<Value, A::Error> {
        let mut list = Vec::new();
        while let Some(Once(value)) = entries.next_element()? {
            list.push(value);
        }
        Ok(Value::Array(list))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut entries: A) -> Result<Value, A::Error> {
        let mut map = Map::new();
        while let Some((key, Once(value))) = entries.next_entry::<String, Once>()? {
            if map.contains_key(&key) {
                return Err(de::Error::custom(format!("the key {key:?} stands twice in one object")));
            }
            map.insert(key, value);
        }
        Ok(Value::Object(map))
    }
}

/// A value as a person would point at it: itself when short, its kind when not.
fn show(value: &Value) -> String {
    match value {
        Value::Array(_) => "a list".to_owned(),
        Value::Object(_) => "an object".to_owned(),
        Value::String(text) if text.len() > 40 => "a long text".to_owned(),
        other => other.to_string(),
    }
}
