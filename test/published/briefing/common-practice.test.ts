import { defaultChecklist } from '../../../src/briefing/content/checklist';
import { contingencies } from '../../../src/briefing/content/contingencies';

// Goal: the default checklist holds every point of two-person practice that we set out to tell, for the right
// role and at the right moment. Method: the points are listed here by hand, each with the words that carry it.
// They are common practice without a source, except where the checklist itself names one.
const points: [moment: string, role: string, words: RegExp][] = [
  ['before', 'both', /on court together/],
  ['before', 'both', /opposite the table.*warm up/],
  ['toss', 'chief', /outside the semicircle opposite the table/],
  ['toss', 'umpire', /centre line on the table side.*table is ready/],
  ['toss', 'umpire', /clock to start when the toss is tapped.*not legal.*again/],
  ['toss', 'umpire', /whichever way.*first lead/],
  ['toss', 'chief', /first trail/],
  ['during', 'both', /Lead:.*end line.*midway between the three-point line and the restricted area/],
  ['during', 'both', /Trail:.*midway between the centre line and the three-point line/],
  ['during', 'both', /opposite sides.*all ten players between you/],
  ['during', 'both', /areas 1, 2, 3 and 6.*lead watches area 4; area 5 is shared/],
  [
    'during',
    'both',
    /open hand straight up for a violation, closed fist for a foul, then direction, then the colour/,
  ],
  [
    'during',
    'both',
    /Throw-in: eyes to your partner, a look at clock and table, stand outside the thrower, count five/,
  ],
  ['during', 'both', /drop the arm when the ball is touched on court/],
  ['during', 'both', /1, 2, 3 and 6: trail signals\. Every successful one: trail signals/],
  ['during', 'both', /area 4: lead signals the attempt, trail mirrors it and signals the success/],
  ['during', 'both', /6 to 8 m from the table: colour, number, kind, free throws/],
  ['during', 'both', /reports becomes trail/],
  [
    'during',
    'both',
    /Free throws, trail: stand level with the free-throw line just outside the three-point line/,
  ],
  ['during', 'both', /Free throws, lead: hand over the ball/],
  ['time-out', 'both', /nearest the table acknowledges/],
  ['time-out', 'both', /three places opposite the table.*former positions/],
  ['time-out', 'both', /ten seconds left/],
  ['after', 'both', /centre line opposite the table/],
  ['after', 'umpire', /scoresheet, then sign/],
  ['after', 'chief', /scoresheet and sign it/],
  ['after', 'both', /Thank the table crew and leave together/],
  ['after', 'both', /two things to keep, one to change, one question/],
];

it.each(points)('%s, %s: %s', (moment, role, words) => {
  const found = defaultChecklist.filter((item) => words.test(item.text));
  expect(found).toHaveLength(1);
  expect(found[0]).toMatchObject({ moment, role });
});

it('names a permanent id once, and a source for every line', () => {
  const ids = defaultChecklist.map((item) => item.id);
  expect(new Set(ids).size).toBe(ids.length);
  for (const { id, moment } of defaultChecklist) expect(id.startsWith(`${moment}.`)).toBe(true);
});

it.each([
  'partner-late',
  'clock',
  'head-injury',
  'injury',
  'collapse',
  'crowd',
  'power',
  'abandoned',
  'team-short',
])('says what to do when: %s', (id) => {
  expect(contingencies.find((one) => one.id === id)?.steps.length).toBeGreaterThanOrEqual(2);
});

it('never tells anybody to diagnose or treat', () => {
  const head = contingencies.find((one) => one.id === 'head-injury');
  expect(head?.steps.join(' ')).toMatch(/Recognise and remove.*medical assessment.*Do not diagnose/);
});
