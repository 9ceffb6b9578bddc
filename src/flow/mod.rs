//! Flow: what guests can reach, in which round, and what is locked behind itself.
