import type { FastifyReply } from 'fastify';

/** One thing told to a page that watches. */
export interface StreamedEvent {
  readonly name: string;
  readonly data: unknown;
}

/** Server-sent events (HTML Living Standard, 9.2). Streams end when the browser leaves or the service stops. */
export class EventStreams {
  private readonly stopping = new AbortController();

  /** Ends all streams; browsers ask again by themselves, of whoever serves then. */
  stop(): void {
    this.stopping.abort();
  }

  /** @param source makes the events until the signal is aborted */
  async send(
    reply: FastifyReply,
    source: (signal: AbortSignal) => AsyncIterable<StreamedEvent>,
  ): Promise<void> {
    const left = new AbortController();
    reply.raw.on('close', () => left.abort());
    const signal = AbortSignal.any([left.signal, this.stopping.signal]);
    reply.hijack();
    reply.raw.writeHead(200, {
      'content-type': 'text/event-stream; charset=utf-8',
      'cache-control': 'no-store',
      // Proxies that gather an answer before they pass it on would hold the events back.
      'x-accel-buffering': 'no',
    });
    try {
      for await (const { name, data } of source(signal)) {
        reply.raw.write(`event: ${name}\ndata: ${JSON.stringify(data)}\n\n`);
      }
    } finally {
      reply.raw.end();
    }
  }
}
