/** A level as a small stack of ticks, one a step, with its name for those who do not see it. */
export function LevelTicks(props: { readonly level: number; readonly name: string }) {
  const count = Math.max(0, Math.min(9, props.level));
  return (
    <span class="nowrap" title={`${props.name} (level ${props.level})`}>
      <svg
        width="14"
        height={Math.max(14, count * 3)}
        viewBox={`0 0 14 ${Math.max(14, count * 3)}`}
        aria-hidden="true"
      >
        {Array.from({ length: count }, (_, step) => {
          const y = Math.max(14, count * 3) - 2 - step * 3;
          return <path key={step} d={`M1 ${y}H13`} stroke="currentColor" stroke-width="1.75" />;
        })}
      </svg>{' '}
      <small>{props.name}</small>
    </span>
  );
}
