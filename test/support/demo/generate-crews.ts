// Writes seed/crews.csv: who officiated the demo's past games, as the solver would have sent them, weekend after weekend with the
// season so far in mind. Run it after `npm run build` as `node dist/test/support/demo/generate-crews.js`; a run is counted in
// steps, so the same lists always give the same crews.
import { writeFileSync } from 'node:fs';
import { demoAssociation } from '../../../src/demo/demo-association';
import { demoKinds } from '../../../src/demo/demo-files';
import { weekendSaturday } from '../../../src/demo/relative-dates';
import { gameStart } from '../../../src/games/game-start';
import type { ImportRecord } from '../../../src/games/imports/import-record';
import { stretchMinutes } from '../../../src/games/imports/kinds/availability.import';
import { legEnd } from '../../../src/games/imports/kinds/travel-legs.import';
import { addDays } from '../../../src/platform/calendar-day';
import { writeCsv } from '../../../src/platform/csv/write-csv';
import { availabilityWindows, type AvailabilityStretch } from '../../../src/roster/availability-windows';
import { isMinorOn } from '../../../src/roster/minors';
import { mapSlateProblem } from '../../../src/slates/slate-problem-mapping';
import type { SlateRecords } from '../../../src/slates/slate-records';
import { checkAnswer, solveSlate } from '../../../src/solver';
import { plannedDemo, type PlannedDemo } from './planned-demo';

// A Wednesday of a winter without a clock change in the ten weeks before. Crews must be legal whatever day the demo is loaded,
// so a night at home is an hour longer here than the policy asks: in spring one loses an hour.
const today = '2026-02-11';
const restMinutes = demoAssociation.policy.minRestMinutes + 60;
const { timeZone, policy, weights, travelModel } = demoAssociation;
const stepsPerWeekend = 400_000;

const text = (record: ImportRecord, field: string) => String(record[field]);
const textOrNull = (record: ImportRecord, field: string) =>
  record[field] === null ? null : text(record, field);
const placeOf = (end: string) => {
  const { kind, key } = legEnd(end);
  return kind === 'venues' ? key : `home:${key}`;
};

function stretchesByOfficial({ records }: PlannedDemo): Map<string, AvailabilityStretch[]> {
  const byOfficial = new Map<string, AvailabilityStretch[]>();
  for (const rule of records('availability')) {
    const official = text(rule, 'official');
    const own = byOfficial.get(official) ?? [];
    own.push({
      kind: text(rule, 'kind') as AvailabilityStretch['kind'],
      localDate: text(rule, 'date'),
      localTime: text(rule, 'from'),
      durationMinutes: stretchMinutes(text(rule, 'from'), text(rule, 'to')),
      timeZone,
      recurrence: rule['repeat'] === '' ? null : text(rule, 'repeat'),
      exceptDates: Array.isArray(rule['except']) ? rule['except'].map(String) : [],
      priority: Number(rule['priority']),
    });
    byOfficial.set(official, own);
  }
  return byOfficial;
}

/** The demo's lists as records of a slate, with codes and numbers for ids. */
function slateRecords(demo: PlannedDemo, week: number, past: SlateRecords['past']): SlateRecords {
  const fromDate = weekendSaturday(week, today);
  const toDate = addDays(fromDate, 1);
  const { records } = demo;
  const stretches = stretchesByOfficial(demo);
  const officials = records('officials').map((official) => ({
    id: text(official, 'number'),
    number: text(official, 'number'),
    givenName: text(official, 'givenName'),
    familyName: text(official, 'familyName'),
    level: Number(official['level']),
    mayBeChief: official['mayBeChief'] === true,
    isMinor: isMinorOn(textOrNull(official, 'birthDate'), fromDate, policy.adultAge),
    homePlaceId: `home:${text(official, 'number')}`,
    maxHomeMinutes: Number(official['maxHomeMinutes']),
    maxGamesPerDay: Number(official['maxGamesPerDay']),
    maxGamesPerSlate: Number(official['maxGamesPerSlate']),
    wishedGamesPerSlate:
      official['wishedGamesPerSlate'] === null ? null : Number(official['wishedGamesPerSlate']),
    certificateExpiresOn: textOrNull(official, 'certificateExpiresOn'),
    active: true,
  }));
  const positionOf = (record: ImportRecord) => ({
    latitude: Number(record['lat']),
    longitude: Number(record['lon']),
  });
  const games = records('games').filter(
    (game) =>
      fromDate <= text(game, 'date') && text(game, 'date') <= toDate && game['status'] !== 'CANCELLED',
  );
  return {
    slate: { id: `W${week}`, name: `W${week}`, fromDate, toDate, version: 1 },
    timeZone,
    policy: { ...policy, minRestMinutes: restMinutes },
    weights,
    travelModel,
    officials,
    freeTimeByOfficialId: new Map(
      officials.map(({ id }) => [
        id,
        availabilityWindows(stretches.get(id) ?? [], { fromDate, toDate }, timeZone),
      ]),
    ),
    conflicts: records('conflicts').map((conflict) => ({
      officialId: text(conflict, 'official'),
      teamId: textOrNull(conflict, 'team'),
      venueId: textOrNull(conflict, 'venue'),
      otherOfficialId: textOrNull(conflict, 'otherOfficial'),
      since: textOrNull(conflict, 'since'),
      until: textOrNull(conflict, 'until'),
    })),
    places: [
      ...records('officials').map((official) => ({
        id: `home:${text(official, 'number')}`,
        ...positionOf(official),
      })),
      ...records('venues').map((venue) => ({ id: text(venue, 'code'), ...positionOf(venue) })),
    ],
    legs: records('travel-legs').map((leg) => ({
      fromPlaceId: placeOf(text(leg, 'from')),
      toPlaceId: placeOf(text(leg, 'to')),
      minutes: Number(leg['minutes']),
      metres: Number(leg['metres']),
      model: text(leg, 'measuredBy'),
    })),
    venues: records('venues').map((venue) => ({
      id: text(venue, 'code'),
      code: text(venue, 'code'),
      name: text(venue, 'name'),
      placeId: text(venue, 'code'),
    })),
    divisions: records('divisions').map((division) => ({
      id: text(division, 'code'),
      code: text(division, 'code'),
      chiefMinLevel: Number(division['chiefMinLevel']),
      umpireMinLevel: Number(division['umpireMinLevel']),
      chiefTargetLevel: Number(division['chiefTargetLevel']),
      umpireTargetLevel: Number(division['umpireTargetLevel']),
      pairingCost: Array.isArray(division['pairingCost']) ? division['pairingCost'].map(Number) : [],
    })),
    games: games.map((game) => ({
      id: text(game, 'number'),
      number: text(game, 'number'),
      divisionId: text(game, 'division'),
      venueId: text(game, 'venue'),
      courtId: textOrNull(game, 'court'),
      localDate: text(game, 'date'),
      startsAt: gameStart({
        date: text(game, 'date'),
        time: text(game, 'time'),
        zone: timeZone,
        utcOffset: null,
      }),
      durationMinutes: Number(game['durationMinutes']),
      homeTeamId: text(game, 'home'),
      awayTeamId: text(game, 'away'),
      priority: Number(game['priority']),
      status: 'CONFIRMED',
    })),
    seats: [],
    assignments: [],
    declined: [],
    elsewhere: [],
    past,
  };
}

async function main(): Promise<void> {
  const demo = await plannedDemo(
    today,
    demoKinds.filter((kind) => kind !== 'crews'),
  );
  for (const fault of demo.plan.faults)
    process.stdout.write(`${fault.file}:${fault.line} ${fault.message}\n`);
  const weeks = process.argv.includes('--coming') ? [1, 2] : [-10, -9, -8, -7, -6, -5, -4, -3, -2, -1];
  const past: SlateRecords['past'][number][] = [];
  const rows: string[][] = [];
  for (const week of weeks) {
    const records = slateRecords(demo, week, past);
    const { problem, faults } = mapSlateProblem(records);
    for (const { message } of faults.filter(({ severity }) => severity !== 'note'))
      process.stdout.write(`${message}\n`);
    const nowSeconds = () => performance.now() / 1000;
    const answer = await solveSlate(problem, { nowSeconds, steps: stepsPerWeekend, seed: 1 });
    const report = checkAnswer(problem, answer);
    const open = answer.assignments.flatMap(({ game, chief, umpire }) => [
      ...(chief === null ? [`${game} chief`] : []),
      ...(umpire === null ? [`${game} umpire`] : []),
    ]);
    process.stdout.write(
      `W${week}: ${records.games.length} games, cost ${answer.cost.total.toFixed(1)}, open: ${open.join(', ') || 'none'} ${JSON.stringify(report).slice(0, 80)}\n`,
    );
    for (const { game: number, chief, umpire } of [...answer.assignments].sort((a, b) =>
      a.game < b.game ? -1 : 1,
    )) {
      rows.push([number, chief ?? '', umpire ?? '']);
      const game = records.games.find(({ id }) => id === number);
      if (game === undefined) continue;
      const { localDate, homeTeamId, awayTeamId } = game;
      for (const officialId of [chief, umpire])
        if (officialId !== null) past.push({ gameId: number, officialId, localDate, homeTeamId, awayTeamId });
    }
  }
  if (process.argv.includes('--coming')) return;
  writeFileSync('seed/crews.csv', writeCsv(['game', 'chief', 'umpire'], rows).replaceAll('\r\n', '\n'));
}

void main();
