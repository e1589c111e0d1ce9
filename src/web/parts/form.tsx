import type { ComponentChildren } from 'preact';
import { useFrame } from '../frame/frame-context';

/** Name of the hidden field that proves a form was drawn for this browser. */
export const formTokenField = 'formToken';

/** A form that changes something; carries the form token. */
export function ActionForm(props: {
  readonly action: string;
  readonly class?: string;
  /** Needed for files. */
  readonly multipart?: boolean;
  readonly children: ComponentChildren;
}) {
  return (
    <form
      method="post"
      action={props.action}
      class={props.class}
      {...(props.multipart === true ? { enctype: 'multipart/form-data' } : {})}
    >
      <input type="hidden" name={formTokenField} value={useFrame().formToken} />
      {props.children}
    </form>
  );
}

export interface FieldProps {
  readonly name: string;
  readonly label: string;
  readonly hint?: string;
  /** What is wrong with what was typed, and what to try. */
  readonly error?: string | undefined;
  readonly value?: string;
  readonly type?: 'text' | 'email' | 'number' | 'date' | 'search' | 'file';
  readonly required?: boolean;
  readonly min?: number;
  readonly max?: number;
  readonly step?: number;
  readonly autocomplete?: string;
  readonly inputMode?: 'email' | 'numeric' | 'text';
  readonly accept?: string;
  readonly maxLength?: number;
}

/** A labelled input with its hint and, beside it, its error; what was typed stays. */
export function Field(props: FieldProps) {
  const { name, label, hint, error, ...input } = props;
  const id = `field-${name}`;
  const notes = [hint && `${id}-hint`, error && `${id}-error`].filter(Boolean).join(' ');
  return (
    <div class="field">
      <label for={id}>{label}</label>
      {hint === undefined ? null : (
        <p class="hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      <input
        id={id}
        name={name}
        type={input.type ?? 'text'}
        value={input.value}
        required={input.required}
        min={input.min}
        max={input.max}
        step={input.step}
        maxLength={input.maxLength}
        accept={input.accept}
        {...(input.autocomplete === undefined ? {} : { autocomplete: input.autocomplete })}
        {...(input.inputMode === undefined ? {} : { inputMode: input.inputMode })}
        {...(notes === '' ? {} : { 'aria-describedby': notes })}
        {...(error === undefined ? {} : { 'aria-invalid': true })}
      />
      {error === undefined ? null : (
        <p class="error" id={`${id}-error`}>
          {error}
        </p>
      )}
    </div>
  );
}

export function Choice(props: {
  readonly name: string;
  readonly label: string;
  readonly value: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
}) {
  const id = `field-${props.name}`;
  return (
    <div class="field">
      <label for={id}>{props.label}</label>
      <select id={id} name={props.name}>
        {props.options.map((option) => (
          <option key={option.value} value={option.value} selected={option.value === props.value}>
            {option.label}
          </option>
        ))}
      </select>
    </div>
  );
}
