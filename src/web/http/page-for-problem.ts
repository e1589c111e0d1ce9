import type { FastifyRequest } from 'fastify';
import type { FailedRequest, PageAnswer } from '../../platform/problem.filter';
import type { Problem } from '../../platform/problem';
import { errorPage } from './error-page';
import type { PageSender } from './page-sender';

/** How a refused page is answered: whoever is not signed in is asked to, and brought back; everybody else is told what is wrong. */
export function pageForProblem(pages: PageSender): (problem: Problem, request: FailedRequest) => PageAnswer {
  return (problem, failed) => {
    if (problem.code === 'ACCESS.NOT_SIGNED_IN') {
      const next =
        failed.method === 'GET' && failed.url !== '/' ? `?next=${encodeURIComponent(failed.url)}` : '';
      return { kind: 'redirect', to: `/sign-in${next}` };
    }
    return { kind: 'html', html: pages.html(errorPage(problem), failed as FastifyRequest, null) };
  };
}
