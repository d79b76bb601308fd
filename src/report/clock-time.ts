/** Measured times as a reader looks for them in a player: `1:02.367`, with hours only where there are some. */
export function printSeconds(seconds: number): string {
  const thousandths = Math.round(seconds * 1000);
  const [hours, minutes] = [Math.floor(thousandths / 3_600_000), Math.floor(thousandths / 60_000) % 60];
  const rest = `${String(Math.floor(thousandths / 1000) % 60).padStart(2, '0')}.${String(thousandths % 1000).padStart(3, '0')}`;
  return hours > 0 ? `${hours}:${String(minutes).padStart(2, '0')}:${rest}` : `${minutes}:${rest}`;
}
