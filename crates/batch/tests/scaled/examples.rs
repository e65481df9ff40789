use crate::support::{answer, line, measured, taken};

/// Source: USDA, Complete Guide to Home Canning, 2015, guide 6, p. 6-14, pickled dilled beans: 4 lb of beans, 4 cups
/// each of vinegar and water, 1/2 cup of salt, 8 cloves of garlic, 1 tsp of pepper flakes; about 8 pints.
///
/// 3 lb are 3/4 of 4 lb: 3 cups each, 3/8 cup of salt, 6 cloves, 3/4 tsp, 6 pints.
#[test]
fn three_pounds_of_beans_make_three_quarters_of_dilled_beans() {
    let fit = answer("dilled_beans", &["3 lb"]);
    assert_eq!(fit.batches.len(), 1);
    assert_eq!(fit.batches[0].factor.to_string(), "3/4");
    assert_eq!(measured(&fit, 0, "vinegar"), "3 cup");
    assert_eq!(measured(&fit, 0, "water"), "3 cup");
    assert_eq!(measured(&fit, 0, "salt"), "3/8 cup");
    assert_eq!(measured(&fit, 0, "garlic"), "6 clove");
    assert_eq!(measured(&fit, 0, "flakes"), "3/4 tsp");
    assert_eq!(fit.batches[0].jars[0].likely, 6);
    assert!(line(&fit, 0, "vinegar").moved_percent.abs() < 1e-9);
    assert!((taken(&fit, 0).as_pounds() - 3.0).abs() < 1e-9);
}
