import { z } from 'zod';

const wholeMinutes = z
  .number()
  .int()
  .min(0)
  .max(7 * 24 * 60);
const weight = z.number().min(0).max(1e9);

/**
 * What an association has decided about duties, rest and warnings. Durations are whole minutes.
 *
 * `arrivalLeadMinutes` is the rule that both officials are on court before tip-off (FIBA Official Basketball
 * Rules, Art. 46: 20 minutes before the scheduled start); the rest is association policy, with defaults that
 * are common practice and have no source.
 */
export const associationPolicySchema = z.strictObject({
  arrivalLeadMinutes: wholeMinutes.default(20),
  wrapUpMinutes: wholeMinutes.default(15),
  sameVenueGapMinutes: wholeMinutes.default(10),
  /** Between coming home from one day's last duty and leaving for the next day's first. Directive 2003/88/EC names 11 hours of daily rest. */
  minRestMinutes: wholeMinutes.default(660),
  /** How long before tip-off the crew is asked to be at the venue; later is a warning, not a violation. */
  venueArrivalMinutes: wholeMinutes.default(45),
  /** Added to every travel estimate before "leave home by" is told to anybody. */
  travelMarginMinutes: wholeMinutes.default(10),
  /** Below this age on the day of the game an official is a minor. */
  adultAge: z.number().int().min(10).max(30).default(18),
  /** How many days of past games count as recent partners and recently seen teams. */
  recentDays: z.number().int().min(1).max(366).default(42),
  /** Hours after publication within which a reply is expected. */
  replyWithinHours: z.number().int().min(1).max(336).default(48),
  /** The edition of the playing rules that briefings quote, as the association has confirmed it. */
  ruleEdition: z.string().min(1).default('FIBA Official Basketball Rules 2024'),
});

export type AssociationPolicy = z.infer<typeof associationPolicySchema>;

/** What one unit of each undesired thing costs when crews are compared; the names are those of the slate problem. */
export const slateWeightsSchema = z.strictObject({
  openSeat: weight.default(10_000),
  travelPerKm: weight.default(0.4),
  balance: weight.default(3),
  teamRepeat: weight.default(4),
  partnerRepeat: weight.default(5),
  overLevel: weight.default(6),
  reluctant: weight.default(25),
  change: weight.default(60),
});

export type SlateWeights = z.infer<typeof slateWeightsSchema>;

/** The affine travel estimate: `fixedMinutes` + straight distance × `circuity` at `speedKmh`. */
export const travelModelSchema = z.strictObject({
  name: z.string().min(1),
  circuity: z.number().min(1).max(5),
  speedKmh: z.number().positive().max(200),
  fixedMinutes: z.number().int().min(0).max(60),
});

export type TravelModel = z.infer<typeof travelModelSchema>;
