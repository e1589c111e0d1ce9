/** A calendar stream taken apart by hand, independent of every calendar library. */
export interface ContentLine {
  readonly name: string;
  readonly parameters: string;
  readonly value: string;
}

/** RFC 5545 §3.1: lines end in CRLF; a line that begins with a blank or a TAB continues the one before. */
export function contentLines(stream: string): ContentLine[] {
  return stream
    .replace(/\r\n[ \t]/g, '')
    .split('\r\n')
    .filter((line) => line !== '')
    .map((line) => {
      const match = /^([A-Za-z0-9-]+)((?:;[^:;]+)*):(.*)$/s.exec(line);
      if (match === null) throw new Error(`no content line: ${JSON.stringify(line)}`);
      const [, name = '', parameters = '', value = ''] = match;
      return { name: name.toUpperCase(), parameters, value };
    });
}

/** Everything that is wrong with a stream as bytes, by RFC 5545 §3.1; empty when nothing is. */
export function byteFaults(stream: string): string[] {
  const bytes = Buffer.from(stream, 'utf8');
  const faults: string[] = [];
  if (bytes.toString('utf8') !== stream) faults.push('not well-formed Unicode');
  if (!stream.endsWith('\r\n')) faults.push('no line end after the last line');
  if (/(^|[^\r])\n/.test(stream)) faults.push('a lone LF');
  if (/\r(?!\n)/.test(stream)) faults.push('a lone CR');
  let start = 0;
  while (start < bytes.length) {
    const end = bytes.indexOf('\r\n', start);
    const line = bytes.subarray(start, end < 0 ? bytes.length : end);
    if (line.length > 75) faults.push(`a line of ${line.length} octets`);
    if (new TextDecoder('utf-8').decode(line).includes('\ufffd') && !stream.includes('\ufffd')) {
      faults.push('a character cut in two by folding');
    }
    if (line.some((byte) => byte === 0x7f || (byte < 0x20 && byte !== 0x09)))
      faults.push('a control character');
    start = end < 0 ? bytes.length : end + 2;
  }
  return [...new Set(faults)];
}
