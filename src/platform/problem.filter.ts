import { Catch, type ArgumentsHost, type ExceptionFilter } from '@nestjs/common';
import { catalogueEntry } from './error-catalogue';
import { redactText, type Log } from './log';
import { asRequestError, problemMediaType, problemOf, type Problem } from './problem';

/** The little that the filter needs of a request. */
export interface FailedRequest {
  readonly id?: unknown;
  readonly method: string;
  readonly url: string;
}

/** How a failed page request is answered. */
export type PageAnswer =
  { readonly kind: 'html'; readonly html: string } | { readonly kind: 'redirect'; readonly to: string };

interface Reply {
  readonly sent?: boolean;
  status(code: number): Reply;
  header(name: string, value: string): Reply;
  send(body: unknown): unknown;
}

export interface ProblemFilterOptions {
  /** Asked for each answer, since the port may be settled only after the filter is made. */
  readonly publicUrl: () => string;
  readonly log: Log;
  /** Draws the page for everything outside `/api`. */
  readonly renderPage: (problem: Problem, request: FailedRequest) => PageAnswer;
}

/** The one place where an error becomes an answer: problem details below `/api`, a page elsewhere. */
@Catch()
export class ProblemFilter implements ExceptionFilter {
  constructor(private readonly options: ProblemFilterOptions) {}

  catch(thrown: unknown, host: ArgumentsHost): void {
    const http = host.switchToHttp();
    const request = http.getRequest<FailedRequest>();
    const reply = http.getResponse<Reply>();
    const error = asRequestError(thrown);
    const { logLevel } = catalogueEntry(error.code);
    this.options.log[logLevel](
      {
        requestId: request.id,
        code: error.code,
        method: request.method,
        url: redactText(request.url),
        ...(logLevel !== 'info' && { err: error.cause ?? error }),
      },
      'request refused',
    );
    // A stream that broke half-way cannot become an error page any more.
    if (reply.sent === true) return;
    const requestId = typeof request.id === 'string' ? request.id : undefined;
    const problem = problemOf(error, { publicUrl: this.options.publicUrl(), requestId });
    reply.status(problem.status).header('cache-control', 'no-store');
    for (const [name, value] of Object.entries(error.headers)) reply.header(name, value);
    if (/^\/api(\/|\?|$)/.test(request.url)) {
      reply.header('content-type', problemMediaType).send(JSON.stringify(problem));
      return;
    }
    const answer = this.options.renderPage(problem, request);
    switch (answer.kind) {
      case 'redirect':
        reply.status(303).header('location', answer.to).send('');
        break;
      case 'html':
        reply.header('content-type', 'text/html; charset=utf-8').send(answer.html);
        break;
    }
  }
}
