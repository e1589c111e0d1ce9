/** A field of an object as files state it: references are codes and numbers, never ids. */
export type FieldValue = string | number | boolean | null | readonly (string | number)[];

/** One object as files state it, by field name. */
export type ImportRecord = Readonly<Record<string, FieldValue>>;
