/*
 * Light on the faces, for the solid: a sun in the north-west, softened shadows of what stands up-light, and dimness at the foot of
 * walls. plyscape.solidLight(stretch) gives { columns, rows, light } with three bytes a cell from the north-west: sun, sky, and the
 * face's depth over the panel's thickness, by which a picture keeps the light of one face from the next across a wall.
 */
(function () {
  'use strict';
  const { panel, map, depthOfCell } = window.plyscape;
  /* The sun stands half-way to the zenith; three heights around that make a soft edge. */
  const SUNS = [0.85, 1.1, 1.45];
  const DIM_REACH_MM = 2.5;

  window.plyscape.solidLight = function (stretch) {
    const { columns, rows, mm } = map;
    const size = columns * rows;
    const height = new Float32Array(size);
    for (let i = 0; i < size; i++) height[i] = -depthOfCell(i) * stretch;
    const sun = new Float32Array(size);
    const shade = new Float32Array(size);
    for (const slope of SUNS) {
      const fall = slope * Math.SQRT2 * mm;
      for (let r = 0, i = 0; r < rows; r++) {
        for (let c = 0; c < columns; c++, i++) {
          const before = r && c ? shade[i - columns - 1] - fall : -1e9;
          sun[i] += height[i] >= before - 0.01 ? 1 / SUNS.length : Math.max(0, 1 - (before - height[i]) / (2 * fall)) / SUNS.length;
          shade[i] = Math.max(height[i], before);
        }
      }
    }
    const reach = Math.max(1, Math.round(DIM_REACH_MM / mm));
    const around = blur(blur(height, columns, rows, reach), columns, rows, reach);
    const light = new Uint8Array(3 * size);
    for (let i = 0; i < size; i++) {
      light[3 * i] = Math.round(255 * Math.min(1, sun[i]));
      light[3 * i + 1] = Math.round(255 * (1 - Math.min(0.4, Math.max(0, around[i] - height[i]) * 0.16)));
      light[3 * i + 2] = Math.round(255 * depthOfCell(i) / panel.thickness);
    }
    return { columns, rows, light };
  };

  /* Mean over a square, by running sums along rows and columns; at the rim over what there is. */
  function blur(values, columns, rows, reach) {
    const across = run(values, rows, columns, columns, 1, reach);
    return run(across, columns, rows, 1, columns, reach);
  }
  function run(values, lines, length, lineStep, step, reach) {
    const out = new Float32Array(values.length);
    for (let line = 0; line < lines; line++) {
      const start = line * lineStep;
      let sum = 0, from = 0, to = 0;
      for (let k = 0; k < length; k++) {
        for (; to <= k + reach && to < length; to++) sum += values[start + to * step];
        for (; from < k - reach; from++) sum -= values[start + from * step];
        out[start + k * step] = sum / (to - from);
      }
    }
    return out;
  }
})();
