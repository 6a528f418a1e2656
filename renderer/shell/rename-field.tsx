import { useEffect, useState } from 'react';
import { Input, Label, TextField } from 'react-aria-components';

/** A name that is changed by typing over it. */
export function RenameField({
  label,
  name,
  onRename,
}: Readonly<{ label: string; name: string; onRename: (name: string) => void }>) {
  const [text, setText] = useState(name);
  useEffect(() => setText(name), [name]);
  const commit = () => {
    const next = text.trim();
    if (next === '') setText(name);
    else if (next !== name) onRename(next);
  };
  return (
    <TextField
      className="rename-field"
      value={text}
      onChange={setText}
      onBlur={commit}
      maxLength={120}
      onKeyDown={event => {
        if (event.key === 'Enter') commit();
        if (event.key === 'Escape') setText(name);
      }}
    >
      <Label>{label}</Label>
      <Input />
    </TextField>
  );
}
