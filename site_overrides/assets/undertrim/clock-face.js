/* How a clock shows a time. */

/* Minutes and seconds, with hours where there are some: 0:09, 12:30, 1:02:03. */
export function clockFace(seconds) {
  const whole = Math.max(0, Math.floor(seconds)), hours = Math.floor(whole / 3600);
  const [minutes, rest] = [Math.floor(whole / 60) % 60, whole % 60].map((value) => String(value).padStart(2, "0"));
  return hours ? `${hours}:${minutes}:${rest}` : `${Number(minutes)}:${rest}`;
}
