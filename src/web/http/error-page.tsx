import type { Problem } from '../../platform/problem';
import { page, type PageContent } from './answer';

/** The page of a request that was refused. */
export function errorPage(problem: Problem): PageContent {
  return page({
    title: problem.title,
    status: problem.status,
    body: (
      <div class="stack narrow">
        <h1>{headline(problem.status)}</h1>
        <p>{problem.title}</p>
        {problem.detail === undefined ? null : <p>{problem.detail}</p>}
        {problem.errors === undefined ? null : (
          <ul>
            {problem.errors.map((fault) => (
              <li key={`${fault.path} ${fault.message}`}>
                {fault.path === '' ? '' : `${fault.path}: `}
                {fault.message}
              </li>
            ))}
          </ul>
        )}
        <p>
          <a href="/">Go to the first page</a>
        </p>
        {problem.status < 500 || problem.requestId === undefined ? null : (
          <p class="small quiet">
            When you report this, name the request: <code>{problem.requestId}</code>
          </p>
        )}
      </div>
    ),
  });
}

function headline(status: number): string {
  switch (status) {
    case 403:
      return 'Not yours to open';
    case 404:
      return 'Nothing here';
    case 409:
    case 412:
      return 'It changed meanwhile';
    case 410:
      return 'This link is spent';
    case 422:
      return 'That cannot be used as it is';
    case 429:
      return 'A little too fast';
    default:
      return status >= 500 ? 'Something broke' : 'That did not work';
  }
}
