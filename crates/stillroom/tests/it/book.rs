//! A September written down from the command line, and asked.

use std::path::{Path, PathBuf};

use crate::program::{Ran, program, read};

/// A book of its own, gone when the test ends.
struct Household(PathBuf);

impl Household {
    fn new(name: &str) -> Self {
        let path = std::env::temp_dir().join(format!("stillroom-{name}-{}", std::process::id()));
        std::fs::create_dir_all(&path).expect("the folder for temporary files takes another");
        Self(path)
    }

    fn file(&self, name: &str) -> PathBuf {
        self.0.join(name)
    }

    fn say_in(&self, book: &str, words: &[&str]) -> Ran {
        let output =
            program(words).env("STILLROOM_BOOK", self.file(book)).env("STILLROOM_WHO", "Wilma").output();
        read(output.expect("the program starts"))
    }

    /// Says something that must be taken, and gives what was printed.
    fn say(&self, words: &[&str]) -> String {
        let ran = self.say_in("house.book", words);
        assert_eq!(ran.code, 0, "{words:?}\n{}", ran.whole());
        assert!(ran.out.lines().all(|line| line.chars().count() <= 80), "{}", ran.out);
        ran.out
    }

    fn september(&self) {
        self.say(&["stands", "peaches, 12 quarts, 2024, cellar", "pickles, 3 quarts, not known"]);
        self.say(&[
            "basket",
            "in",
            "damsons",
            "5.4 kg",
            "--bowl",
            "blue bowl",
            "--tare",
            "400 g",
            "--condition",
            "split",
        ]);
        self.say(&["put-up", "damson jam, 9 half-pints, cellar", "--supply", "lids of August"]);
        self.say(&["put-up", "corn, 6 bags, chest freezer", "--supply", "lids of August"]);
        self.say(&["basket", "use", "damsons", "3 kg"]);
        self.say(&["lot", "seals", "damson jam", "--failed", "1"]);
        self.say(&["lot", "lost", "damson jam", "spoiled", "--unsealed"]);
        self.say(&["shelf", "move", "corn", "kitchen freezer", "--count", "2"]);
        self.say(&["draw", "damson jam", "--count", "2", "--given", "Otto"]);
        self.say(&["draw", "peaches"]);
        self.say(&["draw", "peaches", "--later", "--eaten"]);
        self.say(&["working", "begin", "kraut", "ferment", "--shelf", "cellar", "--look-in", "3"]);
        self.say(&["working", "look", "kraut", "--taste", "not sour enough", "--ph", "3.85"]);
    }
}

impl Drop for Household {
    fn drop(&mut self) {
        let _ = std::fs::remove_dir_all(&self.0);
    }
}

/// Asserts that all of these are said, wherever the lines break.
fn expect_all(text: &str, parts: &[&str]) {
    let flat = |text: &str| text.replace('│', " ").split_whitespace().collect::<Vec<_>>().join(" ");
    for part in parts {
        assert!(text.contains(part) || flat(text).contains(&flat(part)), "{part:?} is not in\n{text}");
    }
}

#[test]
fn a_september_is_written_down_and_asked() {
    let house = Household::new("september");
    house.september();
    expect_all(
        &house.say(&["shelf", "list"]),
        &[
            "cellar: 20 containers",
            "6 half-pints on cellar",
            "11 quarts",
            "4 bags",
            "2 bags",
            "from before this book",
        ],
    );
    let first = house.say(&["shelf", "first"]);
    let place = |name: &str| first.find(name).expect("each lot is in the row");
    assert!(place("pickles") < place("peaches") && place("peaches") < place("damson jam"), "{first}");
    expect_all(
        &house.say(&["tell", "month"]),
        &[
            "Put up 6 bags of corn and 9 half-pints of damson jam.",
            "One did not seal.",
            "3 came off the shelves.",
        ],
    );
    let csv = house.say_in("house.book", &["tell", "month", "--as", "csv"]);
    expect_all(
        &csv.out,
        &["from,to,what,name,size,how,number\n", ",took,damson jam,half-pint,given to Otto,2\n"],
    );
    let markdown = house.say_in("house.book", &["tell", "month", "--as", "markdown"]);
    expect_all(&markdown.out, &["| put up | damson jam | 9 half-pints |  |"]);
    expect_all(&house.say(&["basket", "list"]), &["damsons", "left: 4 lb 6 1/2 oz", "split"]);
    expect_all(&house.say(&["working", "list"]), &["kraut", "not sour enough", "A pH reading opens nothing"]);
}

#[test]
fn a_bad_jar_leads_to_the_recall_sheet() {
    let house = Household::new("recall");
    house.september();
    let sheet = house.say(&["lot", "trouble", "damson jam", "bulging lid"]);
    expect_all(
        &sheet,
        &[
            "Recall sheet",
            "Do not taste.",
            "Otto (2)",
            "lids-of-august",
            "corn",
            "extension",
            "Trouble in 1: bulging lid.",
        ],
    );
    house.say(&["lot", "warned", "damson jam", "Otto"]);
    expect_all(&house.say(&["lot", "recall", "damson jam"]), &["Otto (2, was told)"]);
}

#[test]
fn a_load_is_kept_by_the_clock_and_leads_to_its_lot() {
    let house = Household::new("load");
    house.say(&["load", "begin", "7 quarts", "--canner", "big canner"]);
    expect_all(&house.say(&["load", "mark", "pressure", "--reading", "11 psi"]), &["at pressure, 11 psi"]);
    expect_all(
        &house.say(&["load", "mark", "fell-below"]),
        &["count it as not processed", "extension office"],
    );
    expect_all(&house.say(&["load", "end", "--not-whole"]), &["out, not the whole process"]);
    house.say(&["put-up", "pear halves, 7 quarts, cellar", "--from-load"]);
    expect_all(&house.say(&["lot", "show", "pear halves"]), &["load: in ", "big-canner"]);
    house.say_in("house.book", &["load", "end"]).expect_wrong_question("no load that is in");
    expect_all(&house.say(&["shelf", "want", "pear halves, 12 quarts"]), &["pear halves: 7 of 12 quarts"]);
    expect_all(
        &house.say(&["lot", "correct", "pear halves", "pear halves, 6 quarts"]),
        &["6 quarts on cellar"],
    );
}

#[test]
fn an_act_is_taken_back_and_stays_in_the_history() {
    let house = Household::new("undo");
    house.say(&["put-up", "damson jam, 9 half-pints, cellar"]);
    house.say(&["draw", "damson jam"]);
    expect_all(
        &house.say(&["take-back", "--why", "it stood behind the honey"]),
        &["Took 1 half-pint (cellar)."],
    );
    expect_all(&house.say(&["shelf", "list"]), &["9 half-pints on cellar"]);
    expect_all(
        &house.say(&["history", "damson jam"]),
        &["took 1 half-pint (cellar) (no longer counts)", "because: it stood behind the honey"],
    );
}

#[test]
fn a_count_is_shown_and_settled() {
    let house = Household::new("count");
    house.say(&["put-up", "damson jam, 9 half-pints, cellar"]);
    expect_all(&house.say(&["shelf", "count", "damson jam", "7"]), &["The book has 2 more.", "shelf settle"]);
    expect_all(&house.say(&["shelf", "settle", "damson jam"]), &["7 half-pints on cellar"]);
}

#[test]
fn what_is_no_question_writes_nothing() {
    let house = Household::new("wrong");
    house.say_in("house.book", &["shelf", "list"]).expect_wrong_question("there is no book at");
    assert!(!house.file("house.book").exists());
    house.say(&["put-up", "damson jam, 9 half-pints, cellar"]);
    for (words, part) in [
        (["put-up", "damson jam"].as_slice(), "how many of which size"),
        (&["draw", "damson jam", "--count", "10"], "the book has 9 there"),
        (&["draw", "damson jam", "--count", "-1"], "-1 is no number"),
        (&["draw", "quinces"], "is called \"quinces\""),
        (&["tell", "fortnight"], "a stretch of days"),
        (&["working", "look", "kraut"], "no working"),
    ] {
        house.say_in("house.book", words).expect_wrong_question(part);
    }
    expect_all(&house.say(&["shelf", "list"]), &["9 half-pints on cellar"]);
}

#[test]
fn low_acid_food_is_refused_with_what_to_do_instead() {
    let house = Household::new("topup");
    house.say(&["put-up", "pickled peppers, 1 quart, refrigerator", "--open", "chilled-acid"]);
    let refused =
        house.say_in("house.book", &["lot", "top-up", "pickled peppers", "--low-acid-oiled-or-cooked"]);
    assert_eq!(refused.code, 3, "{}", refused.whole());
    expect_all(&refused.out, &["Do not.", "Instead", "extension office"]);
    house.say(&["lot", "top-up", "pickled peppers", "1/2 lb"]);
    house.say(&["lot", "close", "pickled peppers"]);
    house.say_in("house.book", &["lot", "top-up", "pickled peppers"]).expect_wrong_question("is not open");
}

#[test]
fn the_file_is_verified_exported_imported_copied_and_restored() {
    let house = Household::new("file");
    house.september();
    let path = |name: &str| house.file(name).display().to_string();
    expect_all(&house.say(&["book", "verify"]), &["The book is whole."]);
    house.say_in("house.book", &["book", "export", &path("book.jsonl")]);
    let imported = house.say_in("copy.book", &["book", "import", &path("book.jsonl")]);
    expect_all(&imported.out, &["entries are added; 0 were here already."]);
    let again = house.say_in("copy.book", &["book", "import", &path("book.jsonl")]);
    expect_all(&again.out, &["0 entries are added;"]);
    let whole = |book: &str| house.say_in(book, &["book", "export"]).out;
    assert_eq!(whole("house.book"), whole("copy.book"));
    for words in [["shelf", "list"], ["shelf", "first"], ["tell", "year"]] {
        assert_eq!(house.say_in("house.book", &words).out, house.say_in("copy.book", &words).out);
    }

    let copied = house.say_in("house.book", &["book", "backup", &path("one.backup")]);
    expect_all(&copied.out, &["are copied to"]);
    house
        .say_in("house.book", &["book", "backup", &path("one.backup")])
        .expect_wrong_question("there already");
    house.say(&["draw", "damson jam"]);
    let restored = house.say_in("house.book", &["book", "restore", &path("one.backup")]);
    expect_all(&restored.out, &["entries again.", "is kept as"]);
    assert_eq!(whole("house.book"), whole("copy.book"));
    expect_all(&house.say_in("house.book", &["book", "path"]).out, &["house.book.backups"]);
    assert_eq!(
        std::fs::read_dir(house.file("house.book.backups")).expect("a day's backup was made").count(),
        1
    );
}

#[test]
fn a_bad_line_of_an_import_adds_nothing() {
    let house = Household::new("import");
    house.say(&["put-up", "damson jam, 9 half-pints, cellar"]);
    let good = house.say_in("house.book", &["book", "export"]).out;
    std::fs::write(house.file("bad.jsonl"), format!("{good}nonsense\n")).expect("the folder is ours");
    let ran = house.say_in("copy.book", &["book", "import", &house.file("bad.jsonl").display().to_string()]);
    ran.expect_wrong_question("Line 3: this is no entry");
    assert!(!house.file("copy.book").exists());
}

#[test]
fn a_changed_letter_is_found_by_verify() {
    let house = Household::new("verify");
    house.say(&["put-up", "damson jam, 9 half-pints, cellar"]);
    change_a_letter(&house.file("house.book"));
    let ran = house.say_in("house.book", &["book", "verify"]);
    assert_eq!(ran.code, 3, "{}", ran.whole());
    expect_all(
        &ran.out,
        &["The book is damaged.", "Entry 1 is not what was written.", "stillroom book restore"],
    );
    house.say_in("house.book", &["shelf", "list"]).expect_world_failed("the file is damaged");
}

fn change_a_letter(path: &Path) {
    let mut bytes = std::fs::read(path).expect("the book is there");
    let at = bytes.windows(10).position(|ten| ten == b"damson jam").expect("the name is in the file");
    bytes[at] = b'D';
    std::fs::write(path, bytes).expect("the book is ours");
}

#[test]
fn the_demo_book_is_whole_and_never_written_over() {
    let house = Household::new("demo");
    let path = house.file("demo.book").display().to_string();
    let made = house.say_in("house.book", &["demo", &path]);
    expect_all(&made.out, &["two years of the Brandl household"]);
    house.say_in("house.book", &["demo", &path]).expect_wrong_question("is there already");
    expect_all(&house.say_in("demo.book", &["book", "verify"]).out, &["The book is whole."]);
    expect_all(&house.say_in("demo.book", &["tell", "2025-09-01..2025-09-30"]).out, &["of damson jam"]);
}
