import { Column, Entity, PrimaryColumn } from 'typeorm';

/** Who did what to which object. The application can add entries and never change one. */
@Entity('audit_entry')
export class AuditEntry {
  @PrimaryColumn('uuid')
  associationId!: string;

  @PrimaryColumn('uuid')
  id!: string;

  @Column('timestamptz')
  at!: Date;

  @Column({ type: 'uuid', nullable: true })
  accountId!: string | null;

  @Column('text')
  action!: string;

  @Column('text')
  objectKind!: string;

  @Column('text')
  objectId!: string;

  @Column({ type: 'jsonb', nullable: true })
  before!: unknown;

  @Column({ type: 'jsonb', nullable: true })
  after!: unknown;
}
