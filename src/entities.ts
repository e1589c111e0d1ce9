import { Account } from './access/account.entity';
import { Association } from './access/association.entity';
import { AuditEntry } from './access/audit-entry.entity';
import { LevelStep } from './access/level-step.entity';
import { Membership } from './access/membership.entity';
import { Session } from './access/session.entity';
import { SignInLink } from './access/sign-in-link.entity';
import { FeedRevision } from './calendar/feed-revision.entity';
import { FeedToken } from './calendar/feed-token.entity';
import { Conflict } from './games/conflict.entity';
import { Division } from './games/division.entity';
import { Game } from './games/game.entity';
import { Team } from './games/team.entity';
import { OutboxMessage } from './notices/outbox-message.entity';
import { Court } from './places/court.entity';
import { Place } from './places/place.entity';
import { TravelLeg } from './places/travel-leg.entity';
import { Venue } from './places/venue.entity';
import { AvailabilityRule } from './roster/availability-rule.entity';
import { Official } from './roster/official.entity';
import { GameReport } from './season/game-report.entity';
import { Observation } from './season/observation.entity';
import { Reflection } from './season/reflection.entity';
import { Assignment } from './slates/assignment.entity';
import { Build } from './slates/build.entity';
import { Proposal } from './slates/proposal.entity';
import { Publication } from './slates/publication.entity';
import { Seat } from './slates/seat.entity';
import { SlateGame } from './slates/slate-game.entity';
import { Slate } from './slates/slate.entity';

/** Every table the service keeps. */
export const entities = [
  Account,
  Association,
  AuditEntry,
  LevelStep,
  Membership,
  Session,
  SignInLink,
  Place,
  Venue,
  Court,
  TravelLeg,
  Official,
  AvailabilityRule,
  Division,
  Team,
  Game,
  Conflict,
  Slate,
  SlateGame,
  Seat,
  Build,
  Proposal,
  Publication,
  Assignment,
  FeedToken,
  FeedRevision,
  OutboxMessage,
  GameReport,
  Reflection,
  Observation,
];
