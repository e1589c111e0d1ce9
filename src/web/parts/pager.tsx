/** Ways to the neighbouring pages of a list. */
export function Pager(props: {
  /** Counts from 1. */
  readonly page: number;
  readonly pageSize: number;
  readonly total: number;
  readonly noun: string;
  /** Address of a page of the list. */
  readonly to: (page: number) => string;
}) {
  const pages = Math.max(1, Math.ceil(props.total / props.pageSize));
  const first = props.total === 0 ? 0 : (props.page - 1) * props.pageSize + 1;
  const last = Math.min(props.total, props.page * props.pageSize);
  return (
    <nav class="row" aria-label="Pages of the list">
      <span class="small quiet">
        {first} to {last} of {props.total} {props.noun}
      </span>
      {props.page > 1 ? (
        <a class="button" rel="prev" href={props.to(props.page - 1)}>
          Earlier ones
        </a>
      ) : null}
      {props.page < pages ? (
        <a class="button" rel="next" href={props.to(props.page + 1)}>
          Further ones
        </a>
      ) : null}
    </nav>
  );
}
