//! The core that many mechanics share: marks with text, found in an unknown, partial or full order.
