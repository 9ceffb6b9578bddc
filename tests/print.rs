//! Tests of `print`.
