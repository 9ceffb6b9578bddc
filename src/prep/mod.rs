//! The host's preparation: what to buy, and what to do in which order.
