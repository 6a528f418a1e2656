/** Whose the pictures under the map are: always in sight while they are. */
export function MapCredit({ text }: Readonly<{ text: string }>) {
  if (text === '') return null;
  return <p className="map-credit">{text}</p>;
}
