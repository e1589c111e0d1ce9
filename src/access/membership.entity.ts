import { Column, Entity, PrimaryColumn } from 'typeorm';
import type { Role } from './role';

/** An account's place in an association. */
@Entity('membership')
export class Membership {
  @PrimaryColumn('uuid')
  associationId!: string;

  @PrimaryColumn('uuid')
  accountId!: string;

  @Column({ type: 'text', array: true })
  roles!: Role[];

  /** The official that the account is; set exactly when the roles include `official`. */
  @Column({ type: 'uuid', nullable: true })
  officialId!: string | null;

  @Column('timestamptz')
  createdAt!: Date;
}
