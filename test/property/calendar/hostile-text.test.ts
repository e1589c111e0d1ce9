import fc from 'fast-check';
import ICAL from 'ical.js';
import { renderCalendar } from '../../../src/calendar/calendar-bytes';
import { personalFeed } from '../../../src/calendar/personal-feed';
import { feedEntry, feedInput } from '../../unit/calendar/feed-fixtures';
import { byteFaults, contentLines } from '../../unit/calendar/ical-lines';

// Goal: whatever people type into names and notes, the stream stays one calendar with one event, keeps to the
// rules of bytes, and an independent parser reads the same text back. Method: names made of everything that
// means something to iCalendar, rendered, checked line by line, and parsed by ical.js.
const awkward = fc.constantFrom(
  '"',
  ';',
  ',',
  ':',
  '\\',
  '\\n',
  '\r\n',
  '\r',
  '\n',
  '\t',
  '\u0007',
  '\u0000',
  '\u007f',
  '\u0085',
  '\u2028',
  '😀',
  '👩🏽‍⚖️',
  'é',
  'Ω',
  'Ж',
  'שלום',
  'مرحبا',
  '\u202e',
  '\ud800',
  ' ',
  'END:VEVENT',
  'ATTENDEE:mailto:evil@example.org',
  'BEGIN:VALARM',
  '\r\nX-EVIL:1',
  '^n',
  "'",
);
const hostile = fc
  .array(fc.oneof(awkward, fc.string({ unit: 'binary', maxLength: 8 }), fc.string({ maxLength: 12 })), {
    maxLength: 12,
  })
  .map((parts) => parts.join(''));
const longWord = fc.string({ unit: fc.constantFrom('a', 'é', '漢', '😀'), minLength: 300, maxLength: 320 });
const text = fc.oneof({ weight: 9, arbitrary: hostile }, { weight: 1, arbitrary: longWord });

/** What must come back: line ends as LF, no control characters, broken surrogates replaced. */
function expected(input: string): string {
  return [...input.replaceAll('\r\n', '\n').replaceAll('\r', '\n')]
    .map((character) => {
      const code = character.codePointAt(0) ?? 0;
      if (code >= 0xd800 && code <= 0xdfff) return '\ufffd';
      const isControl = (code < 0x20 && code !== 0x09 && code !== 0x0a) || (code >= 0x7f && code <= 0x9f);
      return isControl ? '' : character;
    })
    .join('');
}

describe('hostile names and notes', () => {
  it('never break out of their property, and come back as they were', () => {
    let exercised = 0;
    fc.assert(
      fc.property(text, text, text, text, (home, venueName, entrance, associationName) => {
        const entry = feedEntry({
          game: { home },
          venue: { name: venueName, entrance, parking: `P${entrance}` },
        });
        const input = feedInput([entry]);
        const stream = renderCalendar(
          personalFeed({ ...input, association: { ...input.association, name: associationName } }),
        );
        expect(byteFaults(stream)).toEqual([]);
        const names = contentLines(stream).map((line) => line.name);
        expect(names.filter((name) => name === 'BEGIN' || name === 'END')).toHaveLength(4);
        expect(names).not.toContain('ATTENDEE');
        expect(names).not.toContain('X-EVIL');
        const event = new ICAL.Event(
          new ICAL.Component(ICAL.parse(stream) as unknown[]).getFirstSubcomponent('vevent') ?? undefined,
        );
        expect(event.uid).toBe(entry.assignment.uid);
        expect(event.description).toContain(`Parking: P${expected(entrance)}`);
        expect(event.summary).toContain(`Crew chief: ${expected(home)} v `.replace(/\s+/g, ' '));
        exercised += Number(entrance.length > 0);
      }),
      { numRuns: 400 },
    );
    expect(exercised).toBeGreaterThan(200);
  });
});
