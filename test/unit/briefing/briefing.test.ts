import { briefing } from '../../../src/briefing/briefing';
import { briefingText } from '../../../src/briefing/briefing-text';
import { briefingDay, briefingInput, briefingOfficial, estimateOf } from './briefing-fixtures';

// Goal: each thing that makes a game special shows on its sheet, and an ordinary game shows none of it.
// Method: one input changed at a time.
const warningsOf = (input = briefingInput()) => briefing(input).warnings.map(({ text }) => text);
const venueDuty = (change: { freeAt: string; minutes: number }) => ({
  kind: 'from-venue' as const,
  travel: estimateOf(change.minutes),
  from: {
    assignmentId: 'a',
    venueId: 'v',
    venueName: 'North Gym',
    place: null,
    localDate: '2026-11-28',
    startsAt: new Date('2026-11-28T15:00:00Z'),
    dutyEndsAt: new Date(change.freeAt),
  },
});

describe('warnings', () => {
  it('has none for an ordinary game', () => {
    expect(warningsOf()).toEqual([]);
  });

  it.each([
    [{ freeAt: '2026-11-28T17:20:00Z', minutes: 30 }, null],
    // 18:10 on court, free at 17:30, 30 minutes of driving: 10 to spare is the margin, 9 is less.
    [{ freeAt: '2026-11-28T17:30:00Z', minutes: 30 }, null],
    [
      { freeAt: '2026-11-28T17:31:00Z', minutes: 30 },
      /tight change of venue, 9 min to spare \(from North Gym to here, 30 min/,
    ],
    [
      { freeAt: '2026-11-28T17:50:00Z', minutes: 30 },
      /10 min too late on court by the plan.*Tell your assignor now/,
    ],
  ])('change of venue %o', (change, expected) => {
    const found = warningsOf(briefingInput({ days: [briefingDay({ journey: venueDuty(change) })] }));
    if (expected === null) expect(found).toEqual([]);
    else expect(found).toEqual([expect.stringMatching(expected)]);
  });

  it('a tight change after this game', () => {
    const onward = {
      venueName: 'South Hall',
      travel: estimateOf(20),
      onCourtAt: new Date('2026-11-28T20:55:00Z'),
    };
    expect(warningsOf(briefingInput({ days: [briefingDay({ wayHome: null, onward })] }))).toEqual([
      expect.stringMatching(/5 min to spare \(from here to South Hall/),
    ]);
  });

  it('late home and early away: less than the rest of 11 hours', () => {
    // Home by 21:13 by the plan.
    const leaving = (at: string) => briefingInput({ days: [briefingDay({ leavesNextDayAt: new Date(at) })] });
    expect(warningsOf(leaving('2026-11-29T08:13:00Z'))).toEqual([]);
    expect(warningsOf(leaving('2026-11-29T08:12:00Z'))).toEqual([
      'Ida Sandell: late home and early away, 10 h 59 min of rest.',
    ]);
  });

  it('long driving, and driving at night', () => {
    expect(warningsOf(briefingInput({ days: [briefingDay({ drivingMinutes: 119 })] }))).toEqual([]);
    expect(warningsOf(briefingInput({ days: [briefingDay({ drivingMinutes: 120 })] }))).toEqual([
      expect.stringMatching(/120 min of driving today\. Break for at least 15 minutes every two hours/),
    ]);
    expect(warningsOf(briefingInput({ days: [briefingDay({ wayHome: estimateOf(215) })] }))).toEqual([
      expect.stringMatching(/between midnight and six/),
    ]);
  });

  it('a minor home late', () => {
    const day = briefingDay({ name: 'Robin Thrift', isMinor: true, wayHome: estimateOf(80) });
    expect(warningsOf(briefingInput({ days: [day] }))).toEqual([
      expect.stringMatching(/Robin Thrift is a minor and would be home at 22:00/),
    ]);
    expect(warningsOf(briefingInput({ days: [{ ...day, wayHome: estimateOf(79) }] }))).toEqual([]);
  });

  it('a game that moved, was cancelled, is not settled, is too short, or lacks a person or a reply', () => {
    expect(warningsOf(briefingInput({ game: { startsAtNow: new Date('2026-11-29T12:00:00Z') } }))).toEqual([
      expect.stringMatching(/now says 12:00 on 2026-11-29/),
    ]);
    expect(warningsOf(briefingInput({ venueHasChanged: true }))).toEqual([
      expect.stringMatching(/another venue/),
    ]);
    expect(warningsOf(briefingInput({ game: { status: 'CANCELLED' } }))).toEqual([
      expect.stringMatching(/cancelled/),
    ]);
    expect(warningsOf(briefingInput({ game: { status: 'TENTATIVE' } }))).toEqual([
      expect.stringMatching(/not settled/),
    ]);
    expect(warningsOf(briefingInput({ game: { durationMinutes: 58 } }))).toEqual([
      expect.stringMatching(/at least 59/),
    ]);
    expect(warningsOf(briefingInput({ crew: [briefingOfficial()] }))).toEqual([
      'Nobody has been named as umpire yet.',
    ]);
    const asked = [
      briefingOfficial(),
      briefingOfficial({ seat: 'umpire', name: 'Robin', reply: 'NEEDS-ACTION' }),
    ];
    expect(warningsOf(briefingInput({ crew: asked }))).toEqual(['Robin has not replied yet.']);
  });
});

describe('the crew', () => {
  const contact = (change: Parameters<typeof briefingOfficial>[0]) =>
    briefing(briefingInput({ crew: [briefingOfficial(change)] })).crew[0];

  it('is reached as each permits, and minors through the guardian only', () => {
    expect(contact({})).toMatchObject({ contact: '+44 1632 960001', callNumber: '+44 1632 960001' });
    expect(contact({ sharesPhone: false })).toMatchObject({
      contact: expect.stringContaining('does not share') as string,
      callNumber: null,
    });
    expect(contact({ phone: ' ' })?.contact).toContain('no number noted');
    const minor = contact({ isMinor: true, guardianName: 'Pat', guardianContact: '+44 1632 960077' });
    expect(minor).toMatchObject({
      contact: 'a minor; through the guardian: Pat, +44 1632 960077',
      callNumber: null,
    });
    expect(contact({ isMinor: true })?.contact).toContain('no guardian is noted');
  });

  it('shows no contact to who may not see it', () => {
    const { crew } = briefing(briefingInput({ showsContacts: false }));
    expect(crew.map((line) => line.contact)).toEqual(['', '']);
  });

  it('with a minor, asks for the usual care', () => {
    const { care } = briefing(briefingInput({ crew: [briefingOfficial({ isMinor: true })] }));
    expect(care[0]?.text).toMatch(/no shared changing room, no lift alone.*guardian/);
    expect(briefing(briefingInput()).care[0]?.text).not.toContain('minor');
  });
});

it('says of missing notes what to do, and which they are', () => {
  const empty = {
    entrance: '',
    changingRoom: ' ',
    tableSide: '',
    parking: '',
    hazards: '',
    emergencyAddress: '',
    defibrillator: '',
    firstAid: '',
    nearestHospital: '',
  };
  const { venue, safety } = briefing(briefingInput({ venue: empty }));
  expect(venue.every((note) => note.isMissing)).toBe(true);
  expect(safety.filter((note) => !note.isMissing).map((note) => note.label)).toEqual(['Emergency number']);
  expect(safety[1]?.text).toBe(
    'Not noted. Say: Saltmarsh Hall, 4 Reed Lane, Marram. Ask the home team for the exact entrance.',
  );
});

it('lists what the division plays otherwise, mini-basketball included', () => {
  const rules = {
    periods: 6,
    periodMinutes: 6,
    clock: 'running' as const,
    shotClockSeconds: 0,
    threePointLine: false,
    ballSize: 5,
    ringHeightCentimetres: 260,
    note: 'Every child plays two periods.',
  };
  const { divisionRules, divisionNote } = briefing(briefingInput({ playingRules: rules }));
  expect(divisionRules.map(({ label, text }) => `${label}: ${text}`)).toEqual([
    'Periods: 6 × 6 min',
    'Clock: runs through',
    'Shot clock: none',
    'Three-point line: does not count',
    'Ball: size 5',
    'Ring: 2.60 m',
  ]);
  expect(divisionNote).toBe('Every child plays two periods.');
});

it('leaves no room unfilled, and names a source beside every line', () => {
  const value = briefing(briefingInput({ association: { replyAddress: null } }));
  expect(JSON.stringify(value)).not.toMatch(/\{\w+\}/);
  for (const line of [...value.clock, ...value.care, ...value.checklist.flatMap(({ items }) => items)]) {
    expect(line.source).not.toBe('');
  }
});

describe('as text', () => {
  const value = briefing(briefingInput({ venue: { firstAid: '' } }));

  it('keeps to the width, and holds every line of the sheet', () => {
    const text = briefingText(value, 72);
    for (const line of text.split('\n')) expect([...line].length).toBeLessThanOrEqual(72);
    const flat = text.replace(/\s+/g, ' ');
    for (const { items } of value.checklist) for (const item of items) expect(flat).toContain(item.text);
    for (const { text: step } of value.clock) expect(flat).toContain(step);
    for (const { steps } of value.contingencies) for (const step of steps) expect(flat).toContain(step);
  });

  it('keeps a word whole that is longer than the line', () => {
    const long = 'x'.repeat(90);
    expect(briefingText(briefing(briefingInput({ venue: { parking: long } })), 60)).toContain(long);
  });
});
