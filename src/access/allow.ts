import { SetMetadata } from '@nestjs/common';
import type { Role } from './role';

/**
 * Who may take a route.
 *
 * - `anyone`: nobody need be signed in.
 * - `signed-in`: any account, whatever its associations.
 * - `member`: any role in the association that the address names.
 * - a role: members who hold it in that association.
 * - `own official`: the member whose official the address names in `:officialId`.
 */
export type Allowance = 'anyone' | 'signed-in' | 'member' | 'own official' | Role;

export const allowanceKey = 'crewloom:allow';

/**
 * Opens a route, or every route of a controller, to those named; one that fits is enough. A route without it is refused to
 * everybody. What belongs to an association has the association's short name as `:slug` in its address.
 */
export const Allow = (...allowances: readonly [Allowance, ...Allowance[]]) =>
  SetMetadata(allowanceKey, allowances);

export const foreignFormKey = 'crewloom:foreign-form';

/**
 * Takes forms that were not drawn by us for this browser, such as a mail program's one-click unsubscribe (RFC 8058). Only for
 * routes whose secret stands in the address.
 */
export const AcceptForeignForms = () => SetMetadata(foreignFormKey, true);
