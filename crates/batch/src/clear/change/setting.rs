//! What a change is said against: the food, the jar and the canner, as far as they are known.

use almanac::{Almanac, CannerKind, Formula, JarSize, ProductId};

use crate::clear::question::ClearQuestion;

/// What is known before a change is read.
#[derive(Debug, Clone)]
pub(crate) struct Setting<'a> {
    /// The food of the process tables; none for a formula that gets no process.
    pub(crate) product: Option<&'a ProductId>,
    /// The jar; none when it was left open.
    pub(crate) jar: Option<JarSize>,
    /// The jars the formula is printed for.
    pub(crate) printed_jars: &'a [JarSize],
    /// Whether it goes into a pressure canner.
    pub(crate) under_pressure: bool,
}

impl<'a> Setting<'a> {
    /// Of a question that says everything.
    pub(crate) fn of_question(question: &'a ClearQuestion, formula: Option<&'a Formula>) -> Self {
        Self {
            product: Some(&question.product),
            jar: Some(question.jar),
            printed_jars: formula.map_or(&[], |formula| &formula.jars),
            under_pressure: question.canner.is_pressure(),
        }
    }

    /// Of a formula, with what else was said. A food that is printed under pressure only goes under pressure.
    pub(crate) fn of_formula(
        almanac: &Almanac,
        formula: &'a Formula,
        jar: Option<JarSize>,
        canner: Option<CannerKind>,
    ) -> Self {
        let product = formula.product.as_ref();
        let printed = product.and_then(|id| almanac.product(id)).map_or(&[][..], |product| &product.canners);
        let only_pressure = !printed.is_empty() && printed.iter().all(|canner| canner.is_pressure());
        Self {
            product,
            jar,
            printed_jars: &formula.jars,
            under_pressure: canner.map_or(only_pressure, CannerKind::is_pressure),
        }
    }
}
