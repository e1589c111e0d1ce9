import { briefing } from '../../../src/briefing/briefing';
import { clockOfTheDay, halfTimeStart, shortestGameMinutes } from '../../../src/briefing/clock-of-the-day';
import { divisionRules, standardRules } from '../../../src/briefing/division-rules';
import { playingRulesSchema } from '../../../src/games/playing-rules';
import { briefingDay, briefingInput, estimateOf } from '../../unit/briefing/briefing-fixtures';

// Goal: the day's clock keeps the published intervals, also over a change of clocks. Method: figures typed in
// from the FIBA Official Basketball Rules (editions 2018 to 2024) and from older FIBA slides for two officials;
// wall times by the runtime's own zone data, which the service itself does not use.
const minute = 60_000;
const stepMinutes = (input = briefingInput()) =>
  new Map(
    clockOfTheDay(input).map(({ at, text }) => [
      text,
      (at.getTime() - input.game.startsAt.getTime()) / minute,
    ]),
  );

describe('FIBA Official Basketball Rules', () => {
  it('Art. 46: both officials are on court 20 minutes before the scheduled start', () => {
    const found = [...stepMinutes()].find(([text]) => text.startsWith('Both on court'));
    expect(found?.[1]).toBe(-20);
  });

  it('Art. 8: 4 × 10 minutes, 2 minutes between quarters, 15 at half-time: 59 minutes at least', () => {
    expect(standardRules).toMatchObject({
      periods: 4,
      periodMinutes: 10,
      intervalMinutes: 2,
      halfTimeMinutes: 15,
      overtimeMinutes: 5,
    });
    expect(shortestGameMinutes(standardRules)).toBe(40 + 2 + 15 + 2);
  });

  it.each([
    [{ periods: 2, periodMinutes: 20 }, 40 + 15],
    [{ periods: 1, periodMinutes: 12 }, 12],
    [{ periods: 6, periodMinutes: 5, intervalMinutes: 1, halfTimeMinutes: 5 }, 30 + 4 + 5],
  ])('Art. 8 applied to %o takes %d minutes at least', (change, minutes) => {
    expect(shortestGameMinutes(playingRulesSchema.parse(change))).toBe(minutes);
  });

  it('Art. 18, 29, 40, 41: time-outs, shot clock and fouls of the standard game', () => {
    expect(standardRules).toMatchObject({
      timeOutsFirstHalf: 2,
      timeOutsSecondHalf: 3,
      shotClockSeconds: 24,
      playerFoulLimit: 5,
      teamFoulLimit: 5,
    });
    expect(divisionRules(standardRules)).toEqual([]);
  });
});

describe('older FIBA slides for two officials', () => {
  it('set the steps 10, 6, 3, 2 and 1½ minutes before tip-off', () => {
    const before = [...stepMinutes()].filter(([, at]) => at < 0 && at >= -10).map(([, at]) => at);
    expect(before).toEqual([-10, -6, -3, -2, -1.5]);
  });

  it('bring the officials back five minutes before the third quarter', () => {
    const steps = stepMinutes();
    const half = steps.get('Half-time, 15 minutes') ?? NaN;
    expect(steps.get('Back on court')).toBe(half + 15 - 5);
    // 105 planned minutes without the interval are 90: half of them is 45.
    expect(half).toBe(45);
  });

  it('know no half-time in a game of one period', () => {
    expect(halfTimeStart(new Date(0), 30, playingRulesSchema.parse({ periods: 1 }))).toBeNull();
  });
});

describe('the day in order', () => {
  it('leaves home so that travel and margin fit before the arrival at the venue', () => {
    const texts = [...stepMinutes()].filter(
      ([text]) => text.includes('leave home') || text.includes('home by'),
    );
    // 45 minutes at the venue + 33 of travel + 10 of margin before; 105 + 15 + 33 + 10 after.
    expect(texts.map(([, at]) => at)).toEqual([-45 - 33 - 10, 105 + 15 + 33 + 10]);
  });

  it('never goes back, whatever the association decides', () => {
    for (const arrivalLeadMinutes of [0, 5, 20, 60]) {
      for (const venueArrivalMinutes of [0, 10, 90]) {
        const at = [
          ...stepMinutes(briefingInput({ policy: { arrivalLeadMinutes, venueArrivalMinutes } })),
        ].map(([, minutes]) => minutes);
        expect(at).toEqual([...at].sort((left, right) => left - right));
      }
    }
  });
});

describe('over a change of clocks', () => {
  const wall = (at: Date, zone: string) =>
    new Intl.DateTimeFormat('en-GB', {
      timeZone: zone,
      hour: '2-digit',
      minute: '2-digit',
      hourCycle: 'h23',
    }).format(at);

  // Zone data 2026f: instants at which the clocks change; each game begins shortly before and ends after.
  it.each([
    ['Europe/London', '2026-10-25T01:00:00Z'],
    ['Europe/Berlin', '2027-03-28T01:00:00Z'],
    ['America/New_York', '2026-11-01T06:00:00Z'],
    ['Australia/Sydney', '2027-04-03T16:00:00Z'],
    ['Australia/Lord_Howe', '2026-10-03T15:30:00Z'],
    ['Pacific/Auckland', '2026-09-26T14:00:00Z'],
  ])(
    '%s at %s: every time of the sheet is what the wall shows, and durations stay true',
    (timeZone, change) => {
      const startsAt = new Date(Date.parse(change) - 60 * minute);
      const input = briefingInput({
        game: { startsAt },
        venue: { timeZone },
        days: [briefingDay({ wayHome: estimateOf(45) })],
      });
      const { clock } = briefing(input);
      expect(clock.length).toBeGreaterThan(12);
      for (const { at, time } of clock) expect(time.slice(0, 5)).toBe(wall(at, timeZone));
      const last = clock.at(-1);
      expect(last?.at.getTime()).toBe(startsAt.getTime() + (105 + 15 + 45 + 10) * minute);
      // The walls before and after differ from the plain sum by exactly the change.
      const [hours = 0, minutes = 0] = (last?.time ?? '').split(':').map(Number);
      const [startHours = 0, startMinutes = 0] = wall(startsAt, timeZone).split(':').map(Number);
      const shown = (hours * 60 + minutes - startHours * 60 - startMinutes + 1440) % 1440;
      expect(Math.abs(shown - 175)).toBe(timeZone === 'Australia/Lord_Howe' ? 30 : 60);
    },
  );
});
