// Goal: a problem file is accepted as it is or refused with all its faults, each at its JSON path. Method: a sound
// document, spoilt in one place or in many.
import { describeFault, readProblem, type Fault } from '../../../src/solver';
import { randomSlate } from '../../support/solver/random-slate';

type Node = Record<string, unknown> & Record<number, unknown>;

function sound(): Record<string, unknown> {
  return JSON.parse(
    JSON.stringify(randomSlate({ seed: 5, games: 6, officials: 6, venues: 2, legShare: 1 })),
  ) as Record<string, unknown>;
}

/** The node at a path such as `games.0`. */
function at(document: Record<string, unknown>, path: string): Node {
  return path.split('.').reduce((node, key) => node[key] as Node, document as Node);
}

function faultsOf(document: unknown): readonly Fault[] {
  const read = readProblem(document);
  return read.ok ? [] : read.faults;
}

it('accepts a sound document and returns it', () => {
  const document = sound();
  document['meta'] = { anything: ['goes', { here: null }] };
  expect(readProblem(document)).toEqual({ ok: true, problem: document });
});

const CASES: readonly [string, string, (document: Record<string, unknown>) => void][] = [
  ['an unknown key', 'officials[0].levle', (d) => void (at(d, 'officials.0')['levle'] = 3)],
  ['a missing key', 'games[0].priority', (d) => void delete at(d, 'games.0')['priority']],
  [
    'an instant without offset',
    'games[0].tipOff',
    (d) => void (at(d, 'games.0')['tipOff'] = '2026-10-24T09:00:00'),
  ],
  [
    'a date that does not exist',
    'games[1].tipOff',
    (d) => void (at(d, 'games.1')['tipOff'] = '2026-02-29T09:00:00Z'),
  ],
  [
    'a month that does not exist',
    'games[1].tipOff',
    (d) => void (at(d, 'games.1')['tipOff'] = '2026-13-01T09:00:00Z'),
  ],
  [
    'a time that does not exist',
    'games[1].tipOff',
    (d) => void (at(d, 'games.1')['tipOff'] = '2026-02-20T25:00:00Z'),
  ],
  [
    'a fractional duration',
    'games[2].durationMinutes',
    (d) => void (at(d, 'games.2')['durationMinutes'] = 75.5),
  ],
  ['no duration', 'games[2].durationMinutes', (d) => void (at(d, 'games.2')['durationMinutes'] = 0)],
  ['no priority', 'games[2].priority', (d) => void (at(d, 'games.2')['priority'] = 0)],
  ['an unknown venue', 'games[0].venue', (d) => void (at(d, 'games.0')['venue'] = 'nowhere')],
  ['an unknown division', 'games[0].division', (d) => void (at(d, 'games.0')['division'] = 'toString')],
  [
    'an unknown locked official',
    'games[0].locked.chief',
    (d) => void (at(d, 'games.0')['locked'] = { chief: 'nobody' }),
  ],
  [
    'a published seat of null',
    'games[0].published.umpire',
    (d) => void (at(d, 'games.0')['published'] = { umpire: null }),
  ],
  ['a duplicate game', 'games[1].id', (d) => void (at(d, 'games.1')['id'] = at(d, 'games.0')['id'])],
  ['a duplicate place', 'places[1].id', (d) => void (at(d, 'places.1')['id'] = at(d, 'places.0')['id'])],
  [
    'a leg twice',
    'travel.legs[2]',
    (d) => void (at(d, 'travel.legs') as unknown as unknown[]).push(at(d, 'travel.legs.0')),
  ],
  ['a latitude out of range', 'places[0].lat', (d) => void (at(d, 'places.0')['lat'] = 90.1)],
  ['a circuity below 1', 'travel.circuity', (d) => void (at(d, 'travel')['circuity'] = 0.9)],
  ['no speed', 'travel.speedKmh', (d) => void (at(d, 'travel')['speedKmh'] = 0)],
  ['a negative weight', 'policy.weights.balance', (d) => void (at(d, 'policy.weights')['balance'] = -1)],
  ['an unknown zone', 'timeZone', (d) => void (d['timeZone'] = 'Nowhere/Land')],
  ['another format', 'format', (d) => void (d['format'] = 'slate-problem/2')],
  [
    'an empty pairing table',
    'divisions[0].pairingCost',
    (d) => void (at(d, 'divisions.0')['pairingCost'] = []),
  ],
  [
    'a window that ends before it begins',
    'officials[0].available[0]',
    (d) => {
      at(d, 'officials.0')['available'] = [{ from: '2026-10-24T12:00:00Z', to: '2026-10-24T12:00:00Z' }];
    },
  ],
  [
    'an unknown avoided official',
    'officials[0].avoidOfficials[0]',
    (d) => void (at(d, 'officials.0')['avoidOfficials'] = ['x']),
  ],
  [
    'an unknown partner',
    'officials[0].recentPartners.x',
    (d) => void (at(d, 'officials.0')['recentPartners'] = { x: 1 }),
  ],
  [
    'a partner named like a part of every object',
    'officials[0].recentPartners.__proto__',
    (d) => {
      at(d, 'officials.0')['recentPartners'] = JSON.parse('{"__proto__": 1}') as unknown;
    },
  ],
  ['a number in quotes', 'officials[0].level', (d) => void (at(d, 'officials.0')['level'] = '3')],
  ['a list that is an object', 'officials', (d) => void (d['officials'] = {})],
];

// A spoilt list makes the names that refer to it unknown, so that more than one fault may be found.
it.each(CASES)('reports %s at %s', (_, path, spoil) => {
  const document = sound();
  spoil(document);
  const found = faultsOf(document);
  expect(found.map((fault) => fault.path)).toContain(path);
  expect(found.length).toBeLessThanOrEqual(8);
  for (const fault of found) expect(describeFault(fault)).toMatch(/\(is .+\)\. .+\.$/);
});

it('reports all faults at once, in the order of the file', () => {
  const document = sound();
  for (const [, , spoil] of [CASES[0]!, CASES[1]!, CASES[3]!, CASES[16]!]) spoil(document);
  expect(faultsOf(document).map((fault) => fault.path)).toEqual([
    'places[0].lat',
    'officials[0].levle',
    'games[0].priority',
    'games[1].tipOff',
  ]);
});

it.each([
  [null],
  ['text'],
  [3],
  [[]],
  [undefined],
  [{}],
  [JSON.parse('{"__proto__": {"format": "slate-problem/1"}}')],
])('refuses %j as a whole', (document) => {
  expect(faultsOf(document).length).toBeGreaterThan(0);
});

it('takes ids named like parts of every object as ordinary ids', () => {
  const text = JSON.stringify(sound())
    .replaceAll('"official-1"', '"__proto__"')
    .replaceAll('"gym-1"', '"constructor"');
  expect(readProblem(JSON.parse(text)).ok).toBe(true);
});

it('never repeats a long value in full', () => {
  const document = sound();
  document['timeZone'] = 'x'.repeat(100_000);
  expect(describeFault(faultsOf(document)[0]!).length).toBeLessThan(300);
});
