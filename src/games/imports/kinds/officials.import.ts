import { isMinorOn } from '../../../roster/minors';
import { date } from '../date-cells';
import { code, decimal, email, line, listOf, orNull, wholeNumber, yesNo } from '../import-cells';
import { defineImportKind, optional, required, type Cell, type RowContext } from '../import-kind';
import { homeEnd } from './travel-legs.import';
import { checkPosition, isElsewhere, noticeMeasuredLegs } from './venues.import';

/** A step of the ladder, by its number or its name. */
export const levelCell: Cell<number> = {
  form: 'a level of the ladder, by number or name',
  read: (text, { state }) => {
    if (/^\d{1,2}$/.test(text) && state.mayHave('levels', String(Number(text))))
      return { value: Number(text) };
    const ladder = [...state.all('levels')];
    const named = ladder.find(([, record]) => record['name'] === text);
    if (named !== undefined) return { value: Number(named[0]) };
    const steps = ladder.map(([level, record]) => `${level} ${String(record['name'])}`).join(', ');
    return {
      message: `There is no level "${text}".`,
      remedy: `use one of ${steps === '' ? 'none yet' : steps}`,
    };
  },
};

const columns = {
  number: required(code(), "the association's own number for the person"),
  givenName: required(line(80), 'given name'),
  familyName: required(line(80), 'family name'),
  level: required(levelCell, 'level of experience'),
  mayBeChief: required(yesNo(), 'whether they may lead a crew'),
  birthDate: optional(orNull(date()), null, 'date of birth; without one they count as an adult'),
  guardianName: optional(line(120), '', "a minor's guardian"),
  guardianContact: optional(line(200), '', 'how to reach the guardian'),
  homeAddress: optional(line(200), '', 'where they set out'),
  lat: optional(orNull(decimal(-90, 90)), null, 'latitude of home, degrees WGS 84'),
  lon: optional(orNull(decimal(-180, 180)), null, 'longitude of home, degrees WGS 84'),
  maxHomeMinutes: optional(wholeNumber(0, 1440), 60, 'longest drive from home, minutes'),
  maxGamesPerDay: optional(wholeNumber(0, 10), 2, 'most games on one day'),
  maxGamesPerSlate: optional(wholeNumber(0, 50), 3, 'most games in one slate'),
  wishedGamesPerSlate: optional(orNull(decimal(0, 50)), null, 'games they would like in one slate'),
  email: optional(email(), null, 'where to write to'),
  phone: optional(line(40), '', 'where to call'),
  sharePhoneWithCrew: optional(yesNo(), true, 'whether the partner of a game may see the phone number'),
  languages: optional(listOf(languageTag()), [], 'languages, BCP 47 tags with "|" between them'),
  certificateExpiresOn: optional(orNull(date()), null, 'last day of their certificate'),
  active: optional(yesNo(), true, 'whether they are to be asked at all'),
};

/** The people who officiate. */
export const officialsImport = defineImportKind({
  name: 'officials',
  noun: 'official',
  after: ['levels'],
  columns,
  keyOf: ({ number }) => number,
  complete: (merged, context, existing) => {
    checkPosition(merged, context);
    checkBirth(merged, context);
    if (merged.maxGamesPerDay > merged.maxGamesPerSlate)
      context.fault(
        'maxGamesPerDay',
        `It is more than the ${merged.maxGamesPerSlate} games of a whole slate.`,
        'raise max_games_per_slate or lower this',
      );
    if (existing !== undefined && existing.lat !== null && isElsewhere(existing, merged))
      noticeMeasuredLegs(homeEnd(merged.number), context);
    return merged;
  },
  checkAll: (rows, { state, notice }) => {
    const holders = new Map<string, string>();
    for (const [key, official] of state.all('officials')) note(holders, key, official['email']);
    for (const { key, record } of rows) note(holders, key, record.email);
    for (const { row, key, record } of rows) {
      const holder = record.email === null ? undefined : holders.get(record.email);
      if (holder !== undefined && holder !== key)
        notice(
          row,
          'email',
          `Official ${holder} has this address too.`,
          'check whether one person stands here twice',
        );
    }
  },
  withdraw: (official) => (official.active ? { ...official, active: false } : undefined),
});

function note(holders: Map<string, string>, key: string, address: unknown): void {
  if (typeof address === 'string' && !holders.has(address)) holders.set(address, key);
}

function checkBirth(
  official: {
    readonly birthDate: string | null;
    readonly guardianName: string;
    readonly guardianContact: string;
  },
  context: RowContext,
): void {
  const { birthDate } = official;
  if (birthDate === null) return;
  if (birthDate >= context.today) {
    context.fault('birthDate', 'It lies in the future.', 'correct the date of birth');
    return;
  }
  const isMinor = isMinorOn(birthDate, context.today, context.association.adultAge);
  if (isMinor && (official.guardianName === '' || official.guardianContact === ''))
    context.notice(
      'guardianName',
      'The official is a minor without a guardian to reach.',
      'add name and contact',
    );
}

function languageTag(): Cell<string> {
  return {
    form: 'a language tag such as en or da',
    read: (text) => {
      try {
        return { value: new Intl.Locale(text).toString() };
      } catch {
        return { message: 'It is no language tag (BCP 47).', remedy: 'write en, da, pt-BR and the like' };
      }
    },
  };
}
