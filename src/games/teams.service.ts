import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { Team } from './team.entity';

export interface TeamFilter {
  readonly divisionId?: string;
  readonly withInactive?: boolean;
}

/** Reads teams. */
@Injectable()
export class TeamsService {
  /** Every team by name; those no longer active only on request. */
  list(tx: EntityManager, associationId: string, filter: TeamFilter = {}): Promise<Team[]> {
    const { divisionId, withInactive } = filter;
    const where = {
      associationId,
      ...(divisionId === undefined ? {} : { divisionId }),
      ...(withInactive === true ? {} : { active: true }),
    };
    return tx.find(Team, { where, order: { name: 'asc', id: 'asc' } });
  }

  get(tx: EntityManager, associationId: string, id: string): Promise<Team | null> {
    return tx.findOneBy(Team, { associationId, id });
  }
}
