/** An empty list or table is left out of the file. */
export function listed<Key extends string, Value extends object>(
  key: Key,
  value: Value,
): Partial<Record<Key, Value>> {
  return Object.keys(value).length === 0 ? {} : ({ [key]: value } as Record<Key, Value>);
}
