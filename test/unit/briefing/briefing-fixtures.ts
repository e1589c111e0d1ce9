import { associationPolicySchema } from '../../../src/access/association-policy';
import type { BriefingDay, BriefingInput, BriefingOfficial } from '../../../src/briefing/briefing-input';
import { playingRulesSchema } from '../../../src/games/playing-rules';

export const estimateOf = (minutes: number) =>
  ({ minutes, metres: minutes * 900, source: 'estimated', model: 'Marram Coast estimate' }) as const;

export function briefingOfficial(change: Partial<BriefingOfficial> = {}): BriefingOfficial {
  return {
    seat: 'chief',
    name: 'Ida Sandell',
    isMinor: false,
    phone: '+44 1632 960001',
    sharesPhone: true,
    guardianName: '',
    guardianContact: '',
    reply: 'ACCEPTED',
    ...change,
  };
}

export function briefingDay(change: Partial<BriefingDay> = {}): BriefingDay {
  return {
    seat: 'chief',
    name: 'Ida Sandell',
    isMinor: false,
    journey: { kind: 'from-home', travel: estimateOf(33) },
    wayHome: estimateOf(33),
    onward: null,
    leavesNextDayAt: null,
    drivingMinutes: 66,
    ...change,
  };
}

/** An ordinary game with everything noted; tests state what matters to them. */
export function briefingInput(
  change: {
    readonly [Key in 'association' | 'policy' | 'game' | 'playingRules' | 'venue']?: Partial<
      BriefingInput[Key]
    >;
  } & Partial<Pick<BriefingInput, 'crew' | 'days' | 'venueHasChanged' | 'showsContacts'>> = {},
): BriefingInput {
  const startsAt = change.game?.startsAt ?? new Date('2026-11-28T18:30:00Z');
  return {
    association: {
      name: 'Marram Coast',
      language: 'en-GB',
      emergencyNumber: '112',
      replyAddress: 'assignor@marram.example',
      ...change.association,
    },
    policy: { ...associationPolicySchema.parse({}), ...change.policy },
    game: {
      number: 'MC-1042',
      status: 'CONFIRMED',
      startsAt,
      startsAtNow: startsAt,
      durationMinutes: 105,
      note: '',
      division: 'Under 14',
      court: 'Court 2',
      home: { name: 'Harbour Gulls', colour: 'white' },
      away: { name: 'Dune Runners', colour: 'green' },
      ...change.game,
    },
    playingRules: { ...playingRulesSchema.parse({}), ...change.playingRules },
    venue: {
      name: 'Saltmarsh Hall',
      address: '4 Reed Lane',
      town: 'Marram',
      timeZone: 'Europe/London',
      entrance: 'Side door on Reed Lane',
      changingRoom: 'Room B',
      tableSide: 'north',
      parking: 'Behind the hall',
      hazards: 'Wall 1 m behind the west end line',
      emergencyAddress: '4 Reed Lane, Marram, gate 2',
      defibrillator: 'Foyer, left of the desk',
      firstAid: 'Caretaker, room 1',
      nearestHospital: 'Marram General, 6 km',
      ...change.venue,
    },
    venueHasChanged: change.venueHasChanged ?? false,
    crew: change.crew ?? [
      briefingOfficial(),
      briefingOfficial({ seat: 'umpire', name: 'Robin Thrift', phone: '+44 1632 960002' }),
    ],
    showsContacts: change.showsContacts ?? true,
    days: change.days ?? [briefingDay()],
  };
}
