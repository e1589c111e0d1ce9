/** A court as people say it: "court 2" where it has a bare number or letter, else its own name. */
export function courtText(name: string): string {
  return /^\w{1,2}$/.test(name) ? `court ${name}` : name;
}
