// Goal: the windows agree, moment by moment, with what the rules say on the wall clock. Method: an independent reading of each
// moment by the runtime's own zone tables (Intl), which shares no code with the expansion; moments near a clock change are left
// to the unit test.
import fc from 'fast-check';
import { availabilityWindows, type AvailabilityStretch } from '../../../src/roster/availability-windows';

const zone = 'Europe/Copenhagen';
const wall = new Intl.DateTimeFormat('sv-SE', { timeZone: zone, dateStyle: 'short', timeStyle: 'short' });
/** Wall-clock milliseconds, as if the wall clock were UTC. */
const wallMs = (instant: number) => Date.parse(`${wall.format(new Date(instant)).replace(' ', 'T')}:00Z`);
const dayMs = 86_400_000;

const ruleArbitrary = fc
  .record({
    kind: fc.constantFrom('available' as const, 'busy' as const, 'reluctant' as const),
    day: fc.integer({ min: -30, max: 60 }),
    minute: fc.integer({ min: 0, max: 95 }).map((quarter) => quarter * 15),
    durationMinutes: fc.integer({ min: 1, max: 200 }).map((quarters) => quarters * 15),
    weeks: fc.option(fc.integer({ min: 1, max: 3 })),
    priority: fc.integer({ min: 0, max: 9 }),
  })
  .map(({ day, minute, weeks, ...rule }) => ({
    ...rule,
    first: Date.UTC(2026, 2, 1) + day * dayMs,
    minute,
    weeks,
  }));
type Drawn = typeof ruleArbitrary extends fc.Arbitrary<infer T> ? T : never;

const stretch = ({ kind, first, minute, durationMinutes, weeks, priority }: Drawn): AvailabilityStretch => ({
  kind,
  localDate: new Date(first).toISOString().slice(0, 10),
  localTime: `${new Date(minute * 60_000).toISOString().slice(11, 16)}:00`,
  durationMinutes,
  timeZone: zone,
  recurrence: weeks === null ? null : `FREQ=WEEKLY;INTERVAL=${weeks}`,
  exceptDates: [],
  priority,
});

/** Whether a rule covers a wall-clock moment. */
function covers(rule: Drawn, at: number): boolean {
  const since = at - (rule.first + rule.minute * 60_000);
  const every = rule.weeks === null ? Infinity : rule.weeks * 7 * dayMs;
  const turn = rule.weeks === null ? 0 : Math.floor(since / every);
  return since >= 0 && since - (turn === 0 ? 0 : turn * every) < rule.durationMinutes * 60_000;
}

const order = ['available', 'reluctant', 'busy'];
function prevailing(rules: readonly Drawn[], at: number): string | null {
  const ranked = rules
    .filter((rule) => covers(rule, at))
    .sort((a, b) => (b.priority || 10) - (a.priority || 10) || order.indexOf(a.kind) - order.indexOf(b.kind));
  return ranked.at(-1)?.kind ?? null;
}

test('moment by moment', () => {
  let free = 0;
  let blocked = 0;
  fc.assert(
    fc.property(fc.array(ruleArbitrary, { minLength: 1, maxLength: 6 }), (rules) => {
      const { available, reluctant } = availabilityWindows(
        rules.map(stretch),
        { fromDate: '2026-03-20', toDate: '2026-04-05' },
        zone,
      );
      const change = Date.UTC(2026, 2, 29, 1);
      for (let at = Date.UTC(2026, 2, 20); at < Date.UTC(2026, 3, 5); at += 97 * 60_000) {
        if (Math.abs(at - change) < 2 * 3_600_000) continue;
        const kind = prevailing(rules, wallMs(at));
        const inside = (list: readonly { from: number; to: number }[]) =>
          list.some(({ from, to }) => from <= at && at < to);
        expect({ at, free: inside(available) }).toEqual({ at, free: kind !== null && kind !== 'busy' });
        expect({ at, reluctant: inside(reluctant) }).toEqual({ at, reluctant: kind === 'reluctant' });
        if (kind !== null && kind !== 'busy') free += 1;
        else blocked += 1;
      }
    }),
    { numRuns: 60 },
  );
  expect(free).toBeGreaterThan(500);
  expect(blocked).toBeGreaterThan(500);
});
