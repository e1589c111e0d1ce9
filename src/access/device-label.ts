const programs: readonly [RegExp, string][] = [
  [/Edg\//, 'Edge'],
  [/OPR\//, 'Opera'],
  [/Firefox\/|FxiOS\//, 'Firefox'],
  [/Chrome\/|CriOS\//, 'Chrome'],
  [/Safari\//, 'Safari'],
];
const systems: readonly [RegExp, string][] = [
  [/iPhone/, 'iPhone'],
  [/iPad/, 'iPad'],
  [/Android/, 'Android'],
  [/Windows/, 'Windows'],
  [/Mac OS X/, 'Mac'],
  [/Linux/, 'Linux'],
];

/** What a session is listed as, such as "Firefox on Android"; a guess from the User-Agent header, and only a label. */
export function deviceLabel(userAgent: string | undefined): string {
  const find = (table: readonly [RegExp, string][]) =>
    table.find(([pattern]) => pattern.test(userAgent ?? ''))?.[1];
  const program = find(programs);
  const system = find(systems);
  if (program === undefined) return 'Another program';
  return system === undefined ? program : `${program} on ${system}`;
}
