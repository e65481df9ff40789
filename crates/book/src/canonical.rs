//! One text for one meaning: JSON as RFC 8785 writes it, with whole numbers only.
//!
//! Keys are sorted by their UTF-16 units, nothing is indented, strings escape no more than JSON demands. Two
//! programs that mean the same entry write the same bytes, so a hash over the bytes is a hash over the meaning.

use serde_json::Value;

use crate::quantity::LARGEST_WHOLE;

/// Why a JSON value has no canonical text here.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum CanonicalError {
    /// A number with a fraction or an exponent.
    #[error(
        "{place} is {number}, and the journal holds whole numbers only; hint: write it in a smaller unit"
    )]
    Fraction {
        /// Where: `body.net_mg`.
        place: String,
        /// What was found.
        number: String,
    },
    /// A number that not every reader of JSON reads exactly.
    #[error("{place} is {number}, beyond {LARGEST_WHOLE}; hint: numbers of the journal stay below 2^53")]
    TooLarge {
        /// Where.
        place: String,
        /// What was found.
        number: String,
    },
    /// Values inside values, deeper than any entry goes.
    #[error("{place} lies deeper than {DEEPEST} levels; hint: no entry is so deep, the file is damaged")]
    TooDeep {
        /// Where it becomes too deep.
        place: String,
    },
}

/// How deep values may lie in one another.
const DEEPEST: usize = 32;

/// Writes the one text of a value. What is null is left out of objects: absent and null mean the same.
///
/// # Errors
///
/// If it holds a number that is not whole, or one beyond 2^53 - 1, or is nested deeper than any entry is.
pub(crate) fn write_canonical(value: &Value) -> Result<String, CanonicalError> {
    let mut text = String::new();
    write_value(value, "", 0, &mut text)?;
    Ok(text)
}

fn write_value(value: &Value, place: &str, depth: usize, text: &mut String) -> Result<(), CanonicalError> {
    if depth > DEEPEST {
        return Err(CanonicalError::TooDeep { place: place.to_owned() });
    }
    match value {
        Value::Null => text.push_str("null"),
        Value::Bool(yes) => text.push_str(if *yes { "true" } else { "false" }),
        Value::Number(number) => match number.as_i64() {
            Some(whole) if whole.abs() <= LARGEST_WHOLE => text.push_str(&whole.to_string()),
            _ if number.is_f64() => {
                return Err(CanonicalError::Fraction { place: place.to_owned(), number: number.to_string() });
            }
            _ => {
                return Err(CanonicalError::TooLarge { place: place.to_owned(), number: number.to_string() });
            }
        },
        Value::String(string) => write_string(string, text),
        Value::Array(items) => {
            text.push('[');
            for (index, item) in items.iter().enumerate() {
                if index > 0 {
                    text.push(',');
                }
                write_value(item, &format!("{place}[{index}]"), depth + 1, text)?;
            }
            text.push(']');
        }
        Value::Object(fields) => {
            let mut fields: Vec<(&String, &Value)> =
                fields.iter().filter(|(_, value)| !value.is_null()).collect();
            fields.sort_by(|(a, _), (b, _)| a.encode_utf16().cmp(b.encode_utf16()));
            text.push('{');
            for (index, (key, value)) in fields.into_iter().enumerate() {
                if index > 0 {
                    text.push(',');
                }
                write_string(key, text);
                text.push(':');
                let inner = if place.is_empty() { key.clone() } else { format!("{place}.{key}") };
                write_value(value, &inner, depth + 1, text)?;
            }
            text.push('}');
        }
    }
    Ok(())
}

fn write_string(string: &str, text: &mut String) {
    text.push('"');
    for letter in string.chars() {
        match letter {
            '"' => text.push_str("\\\""),
            '\\' => text.push_str("\\\\"),
            '\u{8}' => text.push_str("\\b"),
            '\t' => text.push_str("\\t"),
            '\n' => text.push_str("\\n"),
            '\u{c}' => text.push_str("\\f"),
            '\r' => text.push_str("\\r"),
            control if control < ' ' => text.push_str(&format!("\\u{:04x}", u32::from(control))),
            plain => text.push(plain),
        }
    }
    text.push('"');
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;
    use serde_json::json;

    use super::*;

    fn check(json: &str, expected: &str) {
        assert_eq!(write_canonical(&serde_json::from_str(json).unwrap()).unwrap(), expected);
    }

    /// Source: RFC 8785 (2020), section 3.2.3, the sorted keys of its example; its numbers are left out, being floats.
    #[test]
    fn keys_sort_as_in_the_example_of_the_standard() {
        check(
            "{\"\\u20ac\":1,\"\\r\":2,\"\\ufb33\":3,\"1\":4,\"\\ud83d\\ude00\":5,\"\\u0080\":6,\"\\u00f6\":7}",
            "{\"\\r\":2,\"1\":4,\"\u{80}\":6,\"ö\":7,\"€\":1,\"😀\":5,\"\u{fb33}\":3}",
        );
    }

    /// Source: RFC 8785 (2020), section 3.2.2, the string of its sample object and its serialized form.
    #[test]
    fn strings_escape_as_in_the_example_of_the_standard() {
        check(
            r#"{"string":"\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/"}"#,
            "{\"string\":\"€$\\u000f\\nA'B\\\"\\\\\\\\\\\"/\"}",
        );
    }

    #[test]
    fn absent_and_null_are_one() {
        check(r#"{"b":null,"a":{"c":null},"d":[null]}"#, r#"{"a":{},"d":[null]}"#);
    }

    #[test]
    fn a_float_has_no_place_and_the_place_is_named() {
        let error = write_canonical(&json!({"body": {"net_mg": [1, 1.5]}})).unwrap_err();
        assert!(error.to_string().starts_with("body.net_mg[1] is 1.5, and the journal"), "{error}");
        assert!(matches!(write_canonical(&json!(1e300)), Err(CanonicalError::Fraction { .. })));
        for large in ["9007199254740992", "-9007199254740992", "18446744073709551615"] {
            let value = serde_json::from_str(large).unwrap();
            assert!(matches!(write_canonical(&value), Err(CanonicalError::TooLarge { .. })), "{large}");
        }
    }

    #[test]
    fn what_is_nested_without_end_is_refused() {
        let mut value = json!(1);
        for _ in 0..60 {
            value = json!([value]);
        }
        assert!(matches!(write_canonical(&value), Err(CanonicalError::TooDeep { .. })));
    }

    fn any_value() -> impl Strategy<Value = Value> {
        let leaf = prop_oneof![
            any::<bool>().prop_map(Value::from),
            (-LARGEST_WHOLE..=LARGEST_WHOLE).prop_map(Value::from),
            any::<String>().prop_map(Value::from),
        ];
        leaf.prop_recursive(4, 32, 6, |inner| {
            prop_oneof![
                proptest::collection::vec(inner.clone(), 0..6).prop_map(Value::from),
                proptest::collection::btree_map(any::<String>(), inner, 0..6)
                    .prop_map(|fields| Value::Object(fields.into_iter().collect())),
            ]
        })
    }

    proptest! {
        #[test]
        fn the_text_reads_back_and_is_written_again_alike(value in any_value()) {
            let text = write_canonical(&value).unwrap();
            let read: Value = serde_json::from_str(&text).unwrap();
            prop_assert_eq!(&read, &value);
            prop_assert_eq!(write_canonical(&read).unwrap(), text);
        }
    }
}
