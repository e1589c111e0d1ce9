import { FaultList, memberPath } from './faults';
import { instantFault } from './instant';

/** An object of unknown content. */
export type JsonObject = Readonly<Record<string, unknown>>;

export interface NumberRange {
  readonly min?: number;
  readonly max?: number;
  /** The minimum itself is not allowed. */
  readonly above?: boolean;
  readonly whole?: boolean;
}

/** The keys an object must and may have. */
export interface Shape {
  readonly required: readonly string[];
  readonly optional?: readonly string[];
  /** The keys are ids of the writer's own. */
  readonly anyKey?: boolean;
}

/**
 * Checks the fields of a document one by one and notes every fault instead of stopping at the first.
 * Each method returns the value when it is sound and `undefined` when it is not (and says so in the list).
 */
export class FieldReader {
  constructor(private readonly list: FaultList) {}

  object(value: unknown, path: string, shape: Shape): JsonObject | undefined {
    if (!isObject(value)) {
      this.list.add(path, value, 'must be an object', 'Write an object in braces.');
      return undefined;
    }
    const known = [...shape.required, ...(shape.optional ?? [])];
    for (const key of shape.required) {
      if (!Object.hasOwn(value, key)) {
        this.list.add(memberPath(path, key), undefined, 'must be present', `Add "${key}".`);
      }
    }
    for (const key of Object.keys(value)) {
      if (shape.anyKey === true || known.includes(key)) continue;
      const remedy = `Remove it, or correct the spelling; known here: ${known.join(', ')}.`;
      this.list.add(memberPath(path, key), value[key], 'is not a known key', remedy);
    }
    return value;
  }

  array(value: unknown, path: string): readonly unknown[] | undefined {
    if (Array.isArray(value)) return value as readonly unknown[];
    this.list.add(path, value, 'must be an array', 'Write a list in square brackets.');
    return undefined;
  }

  number(value: unknown, path: string, range: NumberRange = {}): number | undefined {
    const { min = -Infinity, max = Infinity, above = false, whole = false } = range;
    const sound = typeof value === 'number' && (whole ? Number.isSafeInteger(value) : Number.isFinite(value));
    if (sound && (above ? value > min : value >= min) && value <= max) return value;
    const kind = whole ? 'a whole number' : 'a finite number';
    const low = min === -Infinity ? '' : above ? ` greater than ${min}` : ` of at least ${min}`;
    const high = max === Infinity ? '' : ` and at most ${max}`;
    this.list.add(path, value, `must be ${kind}${low}${high}`, 'Correct the figure; it is a JSON number.');
    return undefined;
  }

  text(value: unknown, path: string, { mayBeEmpty = false } = {}): string | undefined {
    if (typeof value === 'string' && (mayBeEmpty || value !== '')) return value;
    const problem = mayBeEmpty ? 'must be a string' : 'must be a string that is not empty';
    this.list.add(path, value, problem, 'Write it in double quotes.');
    return undefined;
  }

  flag(value: unknown, path: string): void {
    if (typeof value !== 'boolean') {
      this.list.add(path, value, 'must be true or false', 'Write true or false without quotes.');
    }
  }

  /** Milliseconds since 1970, or undefined. */
  instant(value: unknown, path: string): number | undefined {
    const fault = instantFault(value);
    if (fault === null) return Date.parse(value as string);
    this.list.add(path, value, fault.problem, fault.remedy);
    return undefined;
  }

  windows(value: unknown, path: string): void {
    this.array(value, path)?.forEach((entry, index) => {
      const at = `${path}[${index}]`;
      const window = this.object(entry, at, { required: ['from', 'to'] });
      if (window === undefined) return;
      const from = Object.hasOwn(window, 'from') ? this.instant(window['from'], `${at}.from`) : undefined;
      const to = Object.hasOwn(window, 'to') ? this.instant(window['to'], `${at}.to`) : undefined;
      if (from !== undefined && to !== undefined && from >= to) {
        const shown = `${String(window['from'])} to ${String(window['to'])}`;
        this.list.add(at, shown, 'must end after it begins', 'Exchange or correct "from" and "to".');
      }
    });
  }

  /** Walks a list whose entries carry unique ids; returns the ids that are sound. */
  idList(
    value: unknown,
    path: string,
    entry: (item: unknown, at: string) => JsonObject | undefined,
  ): Set<string> {
    const indexById = new Map<string, number>();
    this.array(value, path)?.forEach((item, index) => {
      const at = `${path}[${index}]`;
      const object = entry(item, at);
      if (object === undefined || !Object.hasOwn(object, 'id')) return;
      const id = this.text(object['id'], `${at}.id`);
      if (id === undefined) return;
      const first = indexById.get(id);
      if (first === undefined) indexById.set(id, index);
      else this.list.add(`${at}.id`, id, `is already the id of ${path}[${first}]`, 'Give each its own id.');
    });
    return new Set(indexById.keys());
  }

  /** A string that must be one of `ids`; `kind` is what they are called, such as `place`. */
  reference(value: unknown, path: string, ids: ReadonlySet<string>, kind: string): void {
    const id = this.text(value, path);
    if (id === undefined || ids.has(id)) return;
    this.list.add(path, id, `names no ${kind} of this file`, `Add the ${kind}, or correct the id.`);
  }
}

export function isObject(value: unknown): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
