import { page, type PageContent } from '../http/answer';
import type { OpenApiDocument, OpenApiOperation, OpenApiParameter } from './open-api';

/** The API's description for people, drawn from the description for programs. */
export function apiPage(document: OpenApiDocument): PageContent {
  const operations = Object.entries(document.paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, operation]) => ({ path, method, operation })),
  );
  const tags = [...new Set(operations.flatMap(({ operation }) => operation.tags))];
  return page({
    title: 'The API',
    body: (
      <>
        <h1>The API</h1>
        <div class="stack narrow">
          <p>{document.info.description}</p>
          <p>
            Programs read the same as <a href="/api/v1/openapi.json">OpenAPI 3.1</a>. A request is signed in
            by the session cookie of a browser, or by a session token sent as{' '}
            <code>Authorization: Bearer</code>.
          </p>
        </div>
        <nav aria-label="Parts of the API">
          <ul class="ways">
            {tags.map((tag) => (
              <li key={tag}>
                <a href={`#${anchor(tag)}`}>{tag}</a>
              </li>
            ))}
          </ul>
        </nav>
        {tags.map((tag) => (
          <section key={tag} class="stack" id={anchor(tag)}>
            <h2>{tag}</h2>
            {operations
              .filter(({ operation }) => operation.tags.includes(tag))
              .map((entry) => (
                <OperationSheet key={entry.operation.operationId} {...entry} />
              ))}
          </section>
        ))}
      </>
    ),
  });
}

function anchor(tag: string): string {
  return tag.toLowerCase().replace(/\W+/g, '-');
}

function OperationSheet({
  path,
  method,
  operation,
}: {
  path: string;
  method: string;
  operation: OpenApiOperation;
}) {
  const bodies = Object.entries(operation.requestBody?.content ?? {});
  return (
    <article class="sheet" id={operation.operationId}>
      <h3>{operation.summary}</h3>
      <p>
        <code>
          {method.toUpperCase()} {path}
        </code>
      </p>
      {typeof operation['description'] === 'string' ? <p>{operation['description']}</p> : null}
      {operation.parameters.length === 0 ? null : (
        <ul>
          {operation.parameters.map((parameter) => (
            <li key={`${parameter.in} ${parameter.name}`}>
              <code>{parameter.name}</code> {parameterNote(parameter)}
            </li>
          ))}
        </ul>
      )}
      {bodies.map(([type, { schema }]) => (
        <SchemaSheet key={type} name={`What to send (${type})`} schema={schema} />
      ))}
      {Object.entries(operation.responses).map(([status, response]) => {
        const schema = response.content?.['application/json']?.schema;
        return schema === undefined ? (
          <p key={status} class="small">
            <b>{status}</b> {response.description}
          </p>
        ) : (
          <SchemaSheet key={status} name={`${status}, what comes back`} schema={schema} />
        );
      })}
    </article>
  );
}

function parameterNote(parameter: OpenApiParameter): string {
  const type = parameter.schema['type'];
  const parts = [
    { path: 'in the address', query: 'in the query', header: 'a header' }[parameter.in],
    typeof type === 'string' ? type : '',
    parameter.required ? 'needed' : '',
    parameter.description ?? '',
  ];
  return parts.filter((part) => part !== '').join(', ');
}

function SchemaSheet({ name, schema }: { name: string; schema: Record<string, unknown> }) {
  return (
    <details>
      <summary>{name}</summary>
      <pre class="scroll" tabIndex={0}>
        <code>{JSON.stringify(schema, null, 2)}</code>
      </pre>
    </details>
  );
}
