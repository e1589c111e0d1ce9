/** Under which address people reach the service; known for good only once it listens. */
export class ServiceAddress {
  private current: string;

  /** @param publicUrl as configured, without a trailing slash; `null`: wherever it listens */
  constructor(private readonly publicUrl: string | null) {
    this.current = publicUrl ?? 'http://localhost';
  }

  listensAt(host: string, port: number): void {
    const name = host === '0.0.0.0' || host === '::' || host === '127.0.0.1' ? 'localhost' : host;
    this.current = this.publicUrl ?? `http://${name.includes(':') ? `[${name}]` : name}:${port}`;
  }

  /** Without a trailing slash. */
  url(): string {
    return this.current;
  }

  /** Whether people reach it by https, so that cookies and addresses may insist on it. */
  isSecure(): boolean {
    return this.current.startsWith('https://');
  }
}
