import type { ImportKind } from './import-kind';
import type { ImportStore } from './import-store';
import { availabilityImport } from './kinds/availability.import';
import { conflictsImport } from './kinds/conflicts.import';
import { divisionsImport } from './kinds/divisions.import';
import { gamesImport } from './kinds/games.import';
import { levelsImport } from './kinds/levels.import';
import { officialsImport } from './kinds/officials.import';
import { teamsImport } from './kinds/teams.import';
import { travelLegsImport } from './kinds/travel-legs.import';
import { venuesImport } from './kinds/venues.import';
import { availabilityStore } from './stores/availability.store';
import { conflictsStore } from './stores/conflicts.store';
import { divisionsStore } from './stores/divisions.store';
import { gamesStore } from './stores/games.store';
import { levelsStore } from './stores/levels.store';
import { officialsStore } from './stores/officials.store';
import { teamsStore } from './stores/teams.store';
import { travelLegsStore } from './stores/travel-legs.store';
import { venuesStore } from './stores/venues.store';

/** A kind of list with its way into the database. */
export interface StoredKind {
  readonly kind: ImportKind;
  readonly store: ImportStore;
}

/** The kinds that this floor knows; floors above may add theirs. */
export const ownKinds: readonly StoredKind[] = [
  { kind: levelsImport, store: levelsStore },
  { kind: venuesImport, store: venuesStore },
  { kind: officialsImport, store: officialsStore },
  { kind: travelLegsImport, store: travelLegsStore },
  { kind: availabilityImport, store: availabilityStore },
  { kind: divisionsImport, store: divisionsStore },
  { kind: teamsImport, store: teamsStore },
  { kind: gamesImport, store: gamesStore },
  { kind: conflictsImport, store: conflictsStore },
];
