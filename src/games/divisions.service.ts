import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { Division } from './division.entity';

/** Reads divisions. */
@Injectable()
export class DivisionsService {
  /** Every division by name. */
  list(tx: EntityManager, associationId: string): Promise<Division[]> {
    return tx.find(Division, { where: { associationId }, order: { name: 'asc', id: 'asc' } });
  }

  get(tx: EntityManager, associationId: string, id: string): Promise<Division | null> {
    return tx.findOneBy(Division, { associationId, id });
  }
}
