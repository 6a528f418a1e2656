import type { FeatureCollection } from 'geojson';
import { useState } from 'react';
import { Button, FieldError, Form, Input, Label, TextField } from 'react-aria-components';
import { readPlace } from './walk-numbers.ts';

type NewCourseProps = Readonly<{ onBegin: (name: string, file: FeatureCollection) => void; onClose: () => void }>;

/** A course from nothing: its name, and where it is when that is known. */
export function NewCourse({ onBegin, onClose }: NewCourseProps) {
  const [name, setName] = useState('');
  const [place, setPlace] = useState('');
  const [wrong, setWrong] = useState<Readonly<{ name?: string; place?: string }>>({});
  const begin = () => {
    const read = place.trim() === '' ? null : readPlace(place);
    const problems = {
      ...(name.trim() === '' && { name: 'write a name' }),
      ...(read?.ok === false && { place: read.problems[0]!.message }),
    };
    setWrong(problems);
    if (Object.keys(problems).length > 0) return;
    const start = read?.ok ? { start: read.value } : { start: [0, 0], placed: 'no' };
    onBegin(name.trim(), {
      type: 'FeatureCollection',
      name: name.trim(),
      ...start,
      features: [],
    } as unknown as FeatureCollection);
  };
  return (
    <Form
      validationBehavior="aria"
      className="new-course"
      aria-label="A new course"
      onSubmit={event => {
        event.preventDefault();
        begin();
      }}
    >
      <h2>A new course</h2>
      <TextField
        className="typed-field"
        value={name}
        onChange={setName}
        isInvalid={wrong.name !== undefined}
        maxLength={120}
        autoFocus
      >
        <Label>Name</Label>
        <Input />
        <FieldError>{wrong.name}</FieldError>
      </TextField>
      <TextField className="typed-field" value={place} onChange={setPlace} isInvalid={wrong.place !== undefined}>
        <Label>Latitude, longitude of its first tee, when known</Label>
        <Input placeholder="46.916, 11.247" />
        <FieldError>{wrong.place}</FieldError>
      </TextField>
      <p className="soft">
        Without a place the holes are drawn on empty ground and say so: lengths and directions hold all the same.
      </p>
      <div className="form-buttons">
        <Button type="submit" className="button">
          Begin
        </Button>
        <Button className="quiet-button" onPress={onClose}>
          Cancel
        </Button>
      </div>
    </Form>
  );
}
