// Wrong: one fault a function, each of another rule.
type Reply = 'yes' | 'no';

export function takesAnything(value: any): unknown {
  return value;
}

export function forgetsAPromise(work: () => Promise<void>): void {
  work();
}

export function forgetsACase(reply: Reply): string | undefined {
  switch (reply) {
    case 'yes':
      return 'y';
  }
}

export function drawsUnseeded(): number {
  return Math.random();
}

export function writesToTheTerminal(): void {
  console.log('here');
}

export function comparesLoosely(left: number, right: number): boolean {
  return left == right;
}
