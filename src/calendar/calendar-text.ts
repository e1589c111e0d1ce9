// Every control character but TAB and LF. They have no place in RFC 5545 TEXT (§3.3.11 takes TSAFE-CHAR),
// and some parsers stop at them.
const controls = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f]/g;

/** Text of several lines: line ends become LF, control characters go, broken surrogates become U+FFFD. */
export function plainText(text: string): string {
  return text
    .replace(/\r\n?/g, '\n')
    .replace(controls, '')
    .replace(/\p{Surrogate}/gu, '\ufffd');
}

/** As `plainText`, on one line: runs of white space become one blank. */
export function singleLine(text: string): string {
  return plainText(text).replace(/\s+/g, ' ').trim();
}

/**
 * A calendar's name. Programs disagree on whether backslashes in X-WR-CALNAME escape anything, so the
 * characters that would need one are replaced.
 */
export function calendarName(text: string): string {
  return singleLine(text).replace(/[,;]/g, ' –').replace(/[\\"]/g, "'");
}

/**
 * A URI as a property value. It is not TEXT and takes no backslashes (RFC 5545 §3.3.13); the library would
 * put some before commas and semicolons, so those are percent-encoded first.
 *
 * @throws when `address` is not an absolute http or https address
 */
export function uriValue(address: string): string {
  const url = new URL(address);
  if (url.protocol !== 'https:' && url.protocol !== 'http:') {
    throw new Error(`A calendar links only to http and https, not to ${url.protocol}`);
  }
  return url.href.replace(/,/g, '%2C').replace(/;/g, '%3B').replace(/\\/g, '%5C');
}
