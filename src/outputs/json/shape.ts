/**
 * One value per key of a contract type, in the order in which they are written. A key that the contract gains
 * and that is forgotten in a shape does not compile, so nothing is left out of a document in silence.
 */
export type Shape<T> = { readonly [K in keyof T]-?: unknown };
