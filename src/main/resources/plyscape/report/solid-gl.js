/* Draws the solid with WebGL 2: plyscape.solidGl(canvas) gives a drawing function, or null where the browser can't. */
(function () {
  'use strict';
  const { data, panel, map, rgb, solidMesh, solidLight } = window.plyscape;

  /* Values are taken inside a triangle where only a part of a pixel is (centroid): past its rim another face's light holds. */
  const VERTEX = `#version 300 es
    in vec3 place; in vec3 normal;
    uniform mat4 turn; uniform vec3 middle; uniform float stretch; uniform float cellMm;
    centroid out float depth; centroid out vec3 facing; centroid out vec2 spot;
    void main() {
      depth = place.z;
      facing = vec3(normal.xy * mix(1.0, stretch, normal.z), normal.z);
      spot = vec2(place.x, 2.0 * middle.y - place.y) / cellMm - 0.5;
      gl_Position = turn * vec4(place.x - middle.x, place.y - middle.y, (middle.z - place.z) * stretch, 1.0);
    }`;
  /* Colour comes from the depth alone: walls show the plies that they cut through, however thin they get on the screen. */
  const FRAGMENT = `#version 300 es
    precision highp float;
    centroid in float depth; centroid in vec3 facing; centroid in vec2 spot;
    out vec4 shown;
    uniform sampler2D layers; uniform sampler2D light; uniform float thickness; uniform vec2 cells;
    const vec3 sun = vec3(-0.5, 0.5, 0.7071);
    /* Light between four cells, of those that lie on this face: it mustn't leak over a wall. */
    vec3 cell(vec2 at, float share) {
      vec3 here = texture(light, (at + 0.5) / cells).rgb;
      float off = (here.z - depth / thickness) * thickness / 0.25;
      return vec3(here.xy, 1.0) * share * (exp(-off * off) + 0.0005);
    }
    vec2 lightHere() {
      vec2 low = floor(spot), part = spot - low;
      vec3 sum = cell(low, (1.0 - part.x) * (1.0 - part.y)) + cell(low + vec2(1.0, 0.0), part.x * (1.0 - part.y))
        + cell(low + vec2(0.0, 1.0), (1.0 - part.x) * part.y) + cell(low + 1.0, part.x * part.y);
      return sum.xy / sum.z;
    }
    void main() {
      vec3 colour = texture(layers, vec2(clamp(depth / thickness, 0.001, 0.999), 0.5)).rgb;
      vec3 n = normalize(facing);
      float lit;
      if (facing.z > 0.5) {
        vec2 here = lightHere();
        lit = 0.62 * here.y + 0.38 / 0.7071 * max(dot(n, sun), 0.0) * here.x;
      } else {
        lit = 0.76 + 0.26 * dot(n, sun);
      }
      shown = vec4(min(colour * lit, 1.0), 1.0);
    }`;

  window.plyscape.solidGl = function (canvas) {
    const gl = canvas.getContext('webgl2', { antialias: true, alpha: false, preserveDrawingBuffer: true });
    if (!gl) return null;
    const program = gl.createProgram();
    for (const [type, text] of [[gl.VERTEX_SHADER, VERTEX], [gl.FRAGMENT_SHADER, FRAGMENT]]) {
      const s = gl.createShader(type);
      gl.shaderSource(s, text);
      gl.compileShader(s);
      if (!gl.getShaderParameter(s, gl.COMPILE_STATUS)) return null;
      gl.attachShader(program, s);
    }
    gl.linkProgram(program);
    if (!gl.getProgramParameter(program, gl.LINK_STATUS)) return null;
    gl.useProgram(program);
    gl.enable(gl.DEPTH_TEST);
    gl.enable(gl.CULL_FACE);
    const uniform = (name) => gl.getUniformLocation(program, name);
    const count = upload();
    layers();
    gl.uniform1i(uniform('light'), 1);
    gl.uniform1f(uniform('thickness'), panel.thickness);
    gl.uniform1f(uniform('cellMm'), map.mm);
    gl.uniform3f(uniform('middle'), panel.width / 2, panel.height / 2, panel.thickness / 2);
    let litFor = 0;

    function upload() {
      const mesh = solidMesh();
      gl.bindBuffer(gl.ARRAY_BUFFER, gl.createBuffer());
      gl.bufferData(gl.ARRAY_BUFFER, mesh.vertices, gl.STATIC_DRAW);
      [['place', 0], ['normal', 12]].forEach(([name, offset]) => {
        const where = gl.getAttribLocation(program, name);
        gl.enableVertexAttribArray(where);
        gl.vertexAttribPointer(where, 3, gl.FLOAT, false, 24, offset);
      });
      canvas.dataset.triangles = String(mesh.count / 3);
      return mesh.count;
    }
    function texture(unit, smaller, larger) {
      gl.activeTexture(unit);
      gl.bindTexture(gl.TEXTURE_2D, gl.createTexture());
      gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MIN_FILTER, smaller);
      gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MAG_FILTER, larger);
      gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_WRAP_S, gl.CLAMP_TO_EDGE);
      gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_WRAP_T, gl.CLAMP_TO_EDGE);
    }
    /* Depth to colour, glue lines dark. Its smaller copies average what shares a pixel, so that stripes don't shimmer. */
    function layers() {
      const steps = 2048;
      const strip = new Uint8Array(steps * 4);
      for (let i = 0; i < steps; i++) {
        const depth = (i + 0.5) / steps * panel.thickness;
        const ply = data.plies.find((p) => depth >= p.top && depth < p.bottom);
        strip.set([...(ply ? rgb(ply.colour) : [58, 47, 38]), 255], 4 * i);
      }
      texture(gl.TEXTURE0, gl.LINEAR_MIPMAP_LINEAR, gl.LINEAR);
      gl.texImage2D(gl.TEXTURE_2D, 0, gl.RGBA, steps, 1, 0, gl.RGBA, gl.UNSIGNED_BYTE, strip);
      gl.generateMipmap(gl.TEXTURE_2D);
      texture(gl.TEXTURE1, gl.NEAREST, gl.NEAREST);
    }
    function relight(stretch) {
      if (litFor === stretch) return;
      litFor = stretch;
      const { columns, rows, light } = solidLight(stretch);
      gl.pixelStorei(gl.UNPACK_ALIGNMENT, 1);
      gl.activeTexture(gl.TEXTURE1);
      gl.texImage2D(gl.TEXTURE_2D, 0, gl.RGB, columns, rows, 0, gl.RGB, gl.UNSIGNED_BYTE, light);
      gl.uniform2f(uniform('cells'), columns, rows);
    }

    /* Draws for a camera (see solid.js) on a paper of the given colour. */
    return function draw(camera, paper) {
      relight(camera.stretch);
      gl.viewport(0, 0, canvas.width, canvas.height);
      gl.clearColor(paper[0] / 255, paper[1] / 255, paper[2] / 255, 1);
      gl.clear(gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT);
      gl.uniformMatrix4fv(uniform('turn'), false, matrix(camera));
      gl.uniform1f(uniform('stretch'), camera.stretch);
      gl.drawArrays(gl.TRIANGLES, 0, count);
    };
  };

  /* Column-major: eye axes, then perspective. */
  function matrix({ right, up, back, centre, distance, radius, wide, tall }) {
    const near = Math.max(distance - radius, radius * 0.05), far = distance + radius;
    const k = (far + near) / (near - far), m = 2 * far * near / (near - far);
    const out = new Float32Array(16);
    for (let i = 0; i < 3; i++) {
      out[4 * i] = right[i] / wide;
      out[4 * i + 1] = up[i] / tall;
      out[4 * i + 2] = back[i] * k;
      out[4 * i + 3] = -back[i];
    }
    out[12] = -centre[0] / wide;
    out[13] = -centre[1] / tall;
    out[14] = -distance * k + m;
    out[15] = distance;
    return out;
  }
})();
