const formats = new Map<string, Intl.NumberFormat>();

/**
 * A number as people of the language write it.
 *
 * @param digits digits after the point, 0 unless stated
 */
export function numberText(value: number, language: string, digits = 0): string {
  const key = `${language} ${digits}`;
  let found = formats.get(key);
  if (found === undefined) {
    found = new Intl.NumberFormat(language, { minimumFractionDigits: digits, maximumFractionDigits: digits });
    formats.set(key, found);
  }
  return found.format(value);
}

/** A change with its sign and an arrow: "▲ +12", "▼ −3"; nothing to show when it is 0. */
export function changeText(value: number, language: string, digits = 0): string {
  if (value === 0) return 'no change';
  const amount = numberText(Math.abs(value), language, digits);
  return value > 0 ? `▲ +${amount}` : `▼ −${amount}`;
}

/** "1 game", "2 games". */
export function countText(count: number, one: string, many: string): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** "45 min", "1 h 20 min". */
export function durationText(minutes: number): string {
  const hours = Math.floor(minutes / 60);
  const rest = minutes - hours * 60;
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}
