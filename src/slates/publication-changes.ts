/** How many assignments one publication made, revised and ended. */
export interface PublicationChanges {
  readonly added: number;
  readonly revised: number;
  readonly ended: number;
}
