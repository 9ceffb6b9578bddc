//! Tests of `bundle`.
