import { Column, Entity, PrimaryColumn } from 'typeorm';

/** A person who can sign in, perhaps to several associations. */
@Entity('account')
export class Account {
  @PrimaryColumn('uuid')
  id!: string;

  /** Lower case. */
  @Column('text')
  email!: string;

  @Column('text')
  displayName!: string;

  @Column('timestamptz')
  createdAt!: Date;

  @Column({ type: 'timestamptz', nullable: true })
  disabledAt!: Date | null;
}
