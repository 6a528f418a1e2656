/** "at the basket", "9° left of the basket". @param aimFromBasket_deg - right positive */
export function aimWords(aimFromBasket_deg: number): string {
  const whole = Math.round(aimFromBasket_deg);
  if (whole === 0) return 'at the basket';
  return `${Math.abs(whole)}° ${whole < 0 ? 'left' : 'right'} of the basket`;
}
