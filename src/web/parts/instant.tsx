import { dayOf, timeOf } from '../format/instants';
import { useFrame } from '../frame/frame-context';

/** Day and time of an instant in a zone, such as "Saturday 14 November, 18:30". */
export function Moment(props: { readonly at: Date; readonly zone: string; readonly timeOnly?: boolean }) {
  const { language } = useFrame();
  const time = timeOf(props.at, props.zone);
  return (
    <time dateTime={props.at.toISOString()}>
      {props.timeOnly === true ? time : `${dayOf(props.at, props.zone, language)}, ${time}`}
    </time>
  );
}
