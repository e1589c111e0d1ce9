import { Injectable, type CallHandler, type ExecutionContext, type NestInterceptor } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { map, type Observable } from 'rxjs';
import { operationOf } from '../api/operation';
import { isPageResult } from './answer';
import type { PageSender } from './page-sender';

/** Turns what handlers return into answers: pages into documents, API results into what their schema promises, no more. */
@Injectable()
export class AnswerInterceptor implements NestInterceptor {
  constructor(private readonly pages: PageSender) {}

  intercept(context: ExecutionContext, next: CallHandler): Observable<unknown> {
    const http = context.switchToHttp();
    const operation = operationOf(context.getHandler());
    return next.handle().pipe(
      map((result: unknown) => {
        if (operation !== null) {
          http.getResponse<FastifyReply>().header('cache-control', 'no-store');
          return operation.response === null ? undefined : operation.response.parse(result);
        }
        if (!isPageResult(result)) return result;
        return this.pages.draw(result, http.getRequest<FastifyRequest>(), http.getResponse<FastifyReply>());
      }),
    );
  }
}
