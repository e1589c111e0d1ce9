/** Marks a text as a style sheet, so that editors and the formatter treat it as one. */
export function css(strings: TemplateStringsArray): string {
  // Raw, so that a backslash reaches the browser: in CSS it begins an escape of its own.
  return strings.raw.join('');
}
