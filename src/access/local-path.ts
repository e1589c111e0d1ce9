/**
 * A path of ours to go on to, read from outside; anything that could lead a browser elsewhere becomes `/`.
 *
 * @param text such as `/marram-coast/slates`
 */
export function localPath(text: unknown): string {
  if (typeof text !== 'string' || text.length > 500) return '/';
  // Browsers read a backslash as a slash and drop tabs and newlines, so `/\t/host` would lead to another host.
  if (!/^\/[\x21-\x7e]*$/.test(text) || /^\/\/|\\/.test(text)) return '/';
  const resolved = new URL(text, 'http://here.invalid');
  return resolved.origin === 'http://here.invalid' ? text : '/';
}
