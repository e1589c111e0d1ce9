import { type CompiledSlate } from './compiled-slate';
import { isReluctant } from '../costs/reluctant';
import { seenTeamGames } from '../costs/team-repeat';
import { isQualified } from '../rules/h1-seat';
import { isAvailable } from '../rules/h2-availability';
import { hasGameConflict } from '../rules/h5-conflicts';
import { isWithinReach } from '../rules/h7-reach';
import { sharedInt32, sharedUint8, type RaggedRows } from './arrays';
import { type SlateFacts } from './facts';
import { FIT_ANY_SEAT, FIT_CHIEF, FIT_RELUCTANT, FIT_SEEN_TEAM, FIT_UMPIRE } from './fit-bits';

type Fit = Pick<CompiledSlate, 'fit' | 'gamesOfOfficial' | 'officialsOfGame'>;

/** Which officials may take which seats, looking at one official and one game at a time. */
export function compileFit(facts: SlateFacts): Fit {
  const fit = sharedUint8(facts.officialCount * facts.gameCount);
  const gamesByVenue = listGamesByVenue(facts);
  for (let official = 0; official < facts.officialCount; official++) {
    for (let venue = 0; venue < facts.venueCount; venue++) {
      // Most venues are out of most officials' reach, so this spares most of the pairs.
      if (!isWithinReach(facts, official, venue)) continue;
      for (const game of gamesByVenue[venue]!) {
        fit[official * facts.gameCount + game] = fitOf(facts, official, game);
      }
    }
  }
  return { fit, ...listFits(facts, fit) };
}

function fitOf(facts: SlateFacts, official: number, game: number): number {
  const chief = isQualified(facts, official, 2 * game) ? FIT_CHIEF : 0;
  const umpire = isQualified(facts, official, 2 * game + 1) ? FIT_UMPIRE : 0;
  if ((chief | umpire) === 0 || !isAvailable(facts, official, game) || hasGameConflict(facts, official, game))
    return 0;
  const reluctant = isReluctant(facts, official, game) ? FIT_RELUCTANT : 0;
  const seen = seenTeamGames(facts, official, game) > 0 ? FIT_SEEN_TEAM : 0;
  return chief | umpire | reluctant | seen;
}

function listGamesByVenue(facts: SlateFacts): readonly (readonly number[])[] {
  const games: number[][] = Array.from({ length: facts.venueCount }, () => []);
  for (let game = 0; game < facts.gameCount; game++) games[facts.gameVenue[game]!]!.push(game);
  return games;
}

/** The possible pairs by official and by game. */
function listFits(
  facts: SlateFacts,
  fit: Uint8Array,
): { gamesOfOfficial: RaggedRows; officialsOfGame: RaggedRows } {
  const byOfficial = sharedInt32(facts.officialCount + 1);
  const byGame = sharedInt32(facts.gameCount + 1);
  for (let official = 0, entry = 0; official < facts.officialCount; official++) {
    for (let game = 0; game < facts.gameCount; game++, entry++) {
      if ((fit[entry]! & FIT_ANY_SEAT) === 0) continue;
      byOfficial[official + 1] = byOfficial[official + 1]! + 1;
      byGame[game + 1] = byGame[game + 1]! + 1;
    }
  }
  for (let official = 0; official < facts.officialCount; official++)
    byOfficial[official + 1]! += byOfficial[official]!;
  for (let game = 0; game < facts.gameCount; game++) byGame[game + 1]! += byGame[game]!;
  const games = sharedInt32(byOfficial[facts.officialCount]!);
  const officials = sharedInt32(games.length);
  const nextOfGame = byGame.slice();
  for (let official = 0, entry = 0, next = 0; official < facts.officialCount; official++) {
    for (let game = 0; game < facts.gameCount; game++, entry++) {
      if ((fit[entry]! & FIT_ANY_SEAT) === 0) continue;
      games[next++] = game;
      officials[nextOfGame[game]!++] = official;
    }
  }
  return {
    gamesOfOfficial: { start: byOfficial, values: games },
    officialsOfGame: { start: byGame, values: officials },
  };
}
