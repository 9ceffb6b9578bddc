//! Paper, counted from the sheets that are laid out.

use super::shopping::{Sum, line};
use super::{PrepPlan, count};
use crate::face::Stock;
use crate::kit::Kit;
use crate::kit::material::material;

impl PrepPlan {
    /// The plan with as much of each paper as the sheets in hand take, those for all groups; what the author's own steps
    /// take of it is added, for each group.
    #[must_use]
    pub fn on_sheets(mut self, kit: &Kit, sheets: &[(Stock, usize)], groups: u16) -> Self {
        let own = kit.preparation.iter().chain(kit.puzzles.iter().flat_map(|puzzle| &puzzle.preparation));
        let takes: Vec<(&String, f64)> =
            own.flat_map(|step| &step.takes).map(|(name, amount)| (name, super::minutes(*amount))).collect();
        for stock in Stock::ALL {
            let id = stock.material();
            let laid: usize = sheets.iter().filter(|(of, _)| *of == stock).map(|(_, sheets)| sheets).sum();
            let more: f64 = takes.iter().filter(|(name, _)| name.as_str() == id).map(|(_, amount)| amount).sum();
            let amount = count(laid) + more * f64::from(groups.max(1));
            let for_what: Vec<String> = self
                .shopping
                .iter()
                .filter(|line| line.material == id && !line.guests)
                .flat_map(|line| line.for_what.clone())
                .collect();
            self.shopping.retain(|line| line.material != id || line.guests);
            if let Some(material) = material(id).filter(|_| amount > 0.0) {
                self.shopping.push(line(material, Sum { amount, for_what }));
            }
        }
        self.shopping.sort_by(|a, b| (a.at_home, &a.name).cmp(&(b.at_home, &b.name)));
        self
    }
}
