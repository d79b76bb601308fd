/**
 * A verb as one record, from which its parser, its help, its line in the README and the type of its call are derived.
 *
 * The key of an option is its word on the command line (`spellOut` is written `--spell-out`) and the field of the call
 * that gets its value; so it has one name, and a command that uses another does not compile.
 */

/** What follows the verb: `SCENE`. */
export interface Argument<Value> {
  /** As in the usage line; `...` at its end means one or more. */
  readonly written: string;
  readonly does: string;
  readonly read: (words: readonly string[]) => Value;
}

/** `Absent`: the type of its value if it is not written. */
export interface Option<Value, Absent = Value> {
  /** What follows it, `<file>`; undefined for a switch. */
  readonly takes: string | undefined;
  /** Its one-letter form: `o` for `-o`. */
  readonly letter?: string;
  /** Its line of help, without a full stop. */
  readonly does: string;
  /** The value of the text after it (of a switch: of nothing). `option` is its name, `--seconds`. @throws UsageError */
  readonly read: (text: string, option: string) => Value;
  /** @throws UsageError if `verb` requires the option */
  readonly absent: (verb: string) => Absent;
}

export type Arguments = Readonly<Record<string, Argument<unknown>>>;
export type Options = Readonly<Record<string, Option<unknown>>>;

export interface Verb<Taken extends Arguments = Arguments, Offered extends Options = Options> {
  /** One sentence, without a full stop. */
  readonly does: string;
  /** What follows the verb, in short: required words first, then a few in brackets. */
  readonly usage: string;
  /** At most one, since only its position says what a bare word is. */
  readonly takes: Taken;
  readonly options: Offered;
  /** Words of earlier versions, without dashes, each with the option that it is now. */
  readonly renamed?: Readonly<Record<string, NoInfer<keyof Offered & string>>>;
  readonly examples: readonly string[];
}

/** The input of a command: a value for each argument and option of its record. */
export type CallOf<V extends Verb> = ValuesOf<V['takes']> & ValuesOf<V['options']>;

type ValuesOf<Records extends Arguments | Options> = {
  readonly [Key in keyof Records]: Records[Key] extends Option<infer Value, infer Absent>
    ? Value | Absent
    : ReturnType<Records[Key]['read']>;
};

/** What was found on a command line: the bare words, and the text after each option by its key; '' after a switch. */
export interface Written {
  readonly words: readonly string[];
  readonly options: ReadonlyMap<string, string>;
}

/** The typed call. @throws UsageError if a value is invalid, or a required option is missing */
export function readCall<V extends Verb>(name: string, { takes, options }: V, written: Written): CallOf<V> {
  const taken = Object.entries(takes).map(([key, { read }]) => [key, read(written.words)]);
  const given = Object.entries(options).map(([key, { read, absent }]) => {
    const text = written.options.get(key);
    return [key, text === undefined ? absent(name) : read(text, wordOf(key))];
  });
  // The one assertion: entries lose which key has which value, and both lists above keep them together.
  return Object.fromEntries([...taken, ...given]) as CallOf<V>;
}

/** The record unchanged, its types kept. */
export function verb<const Taken extends Arguments, const Offered extends Options>(
  record: Verb<Taken, Offered>,
): Verb<Taken, Offered> {
  return record;
}

/** `spellOut` is written `--spell-out`. */
export function wordOf(key: string): string {
  return `--${key.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;
}
