export const HANDS = { backhand: 'backhand', forehand: 'forehand' } as const;
export const SHAPES = {
  flat: 'flat',
  hyzer: 'hyzer',
  anhyzer: 'anhyzer',
  roller: 'roller',
  overhead: 'overhead',
} as const;
const POWERS: Readonly<Record<string, string>> = {
  full: 'full power',
  '0.9': '90 %',
  '0.8': '80 %',
  '0.7': '70 %',
  '0.6': '60 %',
  '0.5': '50 %',
  part: 'part, not known',
};

/** The powers to choose from, with the one at hand among them. */
export const powersWith = (power: string): Readonly<Record<string, string>> =>
  power in POWERS ? POWERS : { ...POWERS, [power]: `${Math.round(Number(power) * 100)} %` };

export const powerOf = (chosen: string): 'full' | 'part' | number =>
  chosen === 'full' || chosen === 'part' ? chosen : Number(chosen);

type PickProps<T extends string> = Readonly<{
  label: string;
  value: T;
  options: Readonly<Record<T, string>>;
  onPick: (value: T) => void;
}>;

/** One of a few, with its label above. */
export function Pick<T extends string>({ label, value, options, onPick }: PickProps<T>) {
  return (
    <label className="plain-field">
      <span>{label}</span>
      <select value={value} onChange={event => onPick(event.target.value as T)}>
        {(Object.entries(options) as [T, string][]).map(([name, words]) => (
          <option key={name} value={name}>
            {words}
          </option>
        ))}
      </select>
    </label>
  );
}
