/*
 * The step of src/physics/cycle/pipe in C, to hold its speed against: the same operations in the same order, in doubles,
 * for a uniform pipe with a wall at either end. The same measures as interior.bench.ts; the two are checked to agree.
 *
 * Answers lines from stdin until there are none: "run STEPS" sets the gas back, takes the steps, and prints the
 * nanoseconds they took; "state" prints rho, rho u, energy and rho burnt of all cells, block by block, in one line.
 */
#define _POSIX_C_SOURCE 199309L
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#define LEAST_PRESSURE 500.0
#define LEAST_DENSITY 1e-3
#define STEEPEST 0.25

/* All blocks lie in one array, each with room for a cell more at either end, as in column.ts. */
enum { RHO, U, P, BURNT, SOUND, LIGHTNESS, MOMENTUM, ENERGY, BURNT_DENSITY, AREA, PER_VOLUME, WIDENING, TAPER, BLOCKS };

typedef struct {
  int cells, floors;
  double dx, area, gamma, R, wall_temperature, drag, warming, wave;
  double *state;
  double edges[16], fluxes[8];
} Pipe;

static const double pi = 3.14159265358979323846;

static void put(Pipe *pipe, int i, double p, double T, double burnt) {
  double *state = pipe->state;
  const int stride = pipe->cells + 2;
  const double rho = p / (pipe->R * T);
  state[i] = rho;
  state[U * stride + i] = 0;
  state[P * stride + i] = p;
  state[BURNT * stride + i] = burnt;
  state[SOUND * stride + i] = sqrt(pipe->gamma * p / rho);
  state[LIGHTNESS * stride + i] = 1 / rho;
  state[MOMENTUM * stride + i] = 0;
  state[ENERGY * stride + i] = p / (pipe->gamma - 1);
  state[BURNT_DENSITY * stride + i] = rho * burnt;
}

static void fill(Pipe *pipe) {
  const int cells = pipe->cells, stride = cells + 2;
  pipe->wave = 0;
  for (int i = 1; i <= cells; i++) {
    const double along = cos(pi * (i - 0.5) / cells);
    put(pipe, i, 1e5 * (1 + 0.2 * along), 400 + 30 * along, 0.5 + 0.4 * along);
    pipe->wave = fmax(pipe->wave, pipe->state[SOUND * stride + i]);
  }
}

static Pipe made(int cells) {
  const double length = 0.8, diameter = 0.04, friction = 0.008, heat_factor = 1.5, loss_heads = 0.5;
  const int stride = cells + 2;
  Pipe pipe = {.cells = cells, .dx = length / cells, .area = 0.25 * pi * diameter * diameter, .gamma = 1.35, .R = 287};
  const double cp = pipe.gamma * pipe.R / (pipe.gamma - 1);
  pipe.wall_temperature = 345;
  pipe.drag = 2 * friction / diameter + loss_heads / (2 * length);
  pipe.warming = heat_factor * 2 * friction * cp / diameter;
  pipe.state = calloc((size_t)BLOCKS * stride, sizeof(double));
  for (int i = 1; i <= cells; i++) {
    pipe.state[AREA * stride + i] = pipe.area;
    pipe.state[PER_VOLUME * stride + i] = 1 / (pipe.area * pipe.dx);
  }
  return pipe;
}

static double held(double slope, double most) {
  if (slope > most) return most;
  return slope < -most ? -most : slope;
}

static double beyond(double step, double slope) {
  return slope == 0.5 * step ? step : step * slope / (step - slope);
}

static void end_cell(Pipe *pipe, double dt, int cell, int side, double *edges) {
  double *state = pipe->state;
  const int stride = pipe->cells + 2;
  double *const us = state + U * stride, *const ps = state + P * stride, *const burnts = state + BURNT * stride;
  const double rho = state[cell], u = us[cell], p = ps[cell], burnt = burnts[cell];
  const double rho_step = rho - state[cell - side];
  const double u_step = u - us[cell - side];
  const double p_step = p - ps[cell - side];
  const double rho_slope = held(0.5 * rho_step, STEEPEST * rho);
  const double u_slope = held(0.5 * u_step, STEEPEST * state[SOUND * stride + cell]);
  const double p_slope = held(0.5 * p_step, STEEPEST * p);
  state[cell + side] = rho + beyond(rho_step, rho_slope);
  us[cell + side] = u + beyond(u_step, u_slope);
  ps[cell + side] = p + beyond(p_step, p_slope);
  burnts[cell + side] = burnt;

  const double along = side * dt / pipe->dx;
  const double drift = along * u;
  const double swelling = along * u_slope + 0.5 * dt / pipe->dx * u * state[TAPER * stride + cell];
  const double rho_mid = rho - drift * rho_slope - swelling * rho;
  const double u_mid = u - drift * u_slope - along * p_slope * state[LIGHTNESS * stride + cell];
  const double p_mid = p - drift * p_slope - pipe->gamma * swelling * p;
  edges[0] = rho_mid + rho_slope;
  edges[1] = u_mid + u_slope;
  edges[2] = p_mid + p_slope;
  edges[3] = burnt;
  edges[4] = rho_mid - rho_slope;
  edges[5] = u_mid - u_slope;
  edges[6] = p_mid - p_slope;
  edges[7] = burnt;
}

/* A wall: nothing but its pressure, eqs. 4.6 and 4.7 of Toro's Riemann Solvers and Numerical Methods (from memory). */
static void wall(Pipe *pipe, int side, const double *edges, double *fluxes) {
  const double rho = edges[0], u = side * edges[1], p = edges[2], gamma = pipe->gamma;
  const double shock_a = 2 / ((gamma + 1) * rho);
  const double shock_b = p * (gamma - 1) / (gamma + 1);
  const double square = u * u / shock_a;
  const double root = sqrt(square * (square + 4 * (p + shock_b)));
  double pressure;
  if (u < 0) {
    pressure = p + 0.5 * (square + root);
  } else {
    pressure = p + 0.5 * (square - root);
    if (!(pressure > 0.01 * p)) pressure = 0.01 * p;
  }
  fluxes[0] = 0;
  fluxes[1] = pressure * pipe->area;
  fluxes[2] = 0;
  fluxes[3] = 0;
}

static inline double half_slope(double before, double after) {
  const double product = before * after;
  return product > 0 ? product / (before + after) : 0;
}

static void advance(Pipe *pipe, double dt) {
  /* `restrict`: nothing else points into the state, and the compiler may know. */
  double *restrict const state = pipe->state;
  const int cells = pipe->cells, stride = cells + 2;
  double *const us = state + U * stride;
  double *const ps = state + P * stride;
  double *const burnts = state + BURNT * stride;
  double *const sounds = state + SOUND * stride;
  double *const lights = state + LIGHTNESS * stride;
  double *const momenta = state + MOMENTUM * stride;
  double *const energies = state + ENERGY * stride;
  double *const burnt_densities = state + BURNT_DENSITY * stride;
  const double *const areas = state + AREA * stride;
  const double *const per_volumes = state + PER_VOLUME * stride;
  const double *const widenings = state + WIDENING * stride;
  const double *const tapers = state + TAPER * stride;
  const double *const edges = pipe->edges, *const fluxes = pipe->fluxes;
  const double gamma = pipe->gamma, gamma_less_1 = gamma - 1, per_gamma_less_1 = 1 / gamma_less_1;
  const double per_R = 1 / pipe->R, wall_temperature = pipe->wall_temperature;
  const double drag = dt * pipe->drag, warming = dt * pipe->warming;
  const double courant = dt / pipe->dx, half_courant = 0.5 * courant;
  int floors = 0;

  double rho = state[1], u = us[1], p = ps[1], light = lights[1], sound = sounds[1];
  double p_half = 0.5 * (edges[2] + edges[6]);
  double rho_l = edges[4], u_l = edges[5], p_l = edges[6], burnt_l = edges[7];
  double rho_step = state[2] - rho, u_step = us[2] - u, p_step = ps[2] - p, burnt_step = burnts[2] - burnts[1];
  double mass_in = fluxes[0], force_in = fluxes[1], power_in = fluxes[2], burnt_in = fluxes[3];
  double wave = 0;

  for (int i = 1; i <= cells; i++) {
    double mass_out, force_out, power_out, burnt_out;
    double rho_next = 0, u_next = 0, p_next = 0, light_next = 0, sound_next = 0, p_half_next = 0;
    double rho_l_next = 0, u_l_next = 0, p_l_next = 0, burnt_l_next = 0;

    if (i < cells) {
      const int next = i + 1, after = i + 2;
      rho_next = state[next];
      u_next = us[next];
      p_next = ps[next];
      light_next = lights[next];
      sound_next = sounds[next];
      const double burnt_next = burnts[next];
      const double rho_after = state[after] - rho_next;
      const double u_after = us[after] - u_next;
      const double p_after = ps[after] - p_next;
      const double burnt_after = burnts[after] - burnt_next;
      const double rho_slope = half_slope(rho_step, rho_after);
      const double u_slope = half_slope(u_step, u_after);
      const double p_slope = half_slope(p_step, p_after);
      const double burnt_slope = half_slope(burnt_step, burnt_after);
      const double drift = courant * u_next;
      const double swelling = courant * u_slope + half_courant * u_next * tapers[next];
      const double rho_mid = rho_next - drift * rho_slope - swelling * rho_next;
      const double u_mid = u_next - drift * u_slope - courant * p_slope * light_next;
      p_half_next = p_next - drift * p_slope - gamma * swelling * p_next;
      const double burnt_mid = burnt_next - drift * burnt_slope;
      const double rho_r = rho_mid - rho_slope;
      const double u_r = u_mid - u_slope;
      const double p_r = p_half_next - p_slope;
      rho_l_next = rho_mid + rho_slope;
      u_l_next = u_mid + u_slope;
      p_l_next = p_half_next + p_slope;
      burnt_l_next = burnt_mid + burnt_slope;
      rho_step = rho_after;
      u_step = u_after;
      p_step = p_after;
      burnt_step = burnt_after;

      const double sound_l = u_l - sound, other_l = u_r - sound_next;
      const double s_l = other_l < sound_l ? other_l : sound_l;
      const double sound_r = u_r + sound_next, other_r = u_l + sound;
      const double s_r = other_r > sound_r ? other_r : sound_r;
      const double weight_l = rho_l * (s_l - u_l);
      const double weight_r = rho_r * (s_r - u_r);
      const double push = p_r - p_l + weight_l * u_l - weight_r * u_r;
      const double weight = weight_l - weight_r;
      if (push <= 0) {
        const double energy = p_l * per_gamma_less_1 + 0.5 * rho_l * u_l * u_l;
        if (s_l < 0) {
          const double contact = push / weight;
          const double d = weight / (s_l * weight - push);
          const double p_star = p_l + weight_l * (contact - u_l);
          mass_out = weight_l * d * contact;
          force_out = mass_out * contact + p_star;
          power_out = contact * (((s_l - u_l) * energy - p_l * u_l + p_star * contact) * d + p_star);
        } else {
          mass_out = rho_l * u_l;
          force_out = mass_out * u_l + p_l;
          power_out = u_l * (energy + p_l);
        }
        burnt_out = mass_out * burnt_l;
      } else {
        const double energy = p_r * per_gamma_less_1 + 0.5 * rho_r * u_r * u_r;
        if (s_r > 0) {
          const double contact = push / weight;
          const double d = weight / (s_r * weight - push);
          const double p_star = p_r + weight_r * (contact - u_r);
          mass_out = weight_r * d * contact;
          force_out = mass_out * contact + p_star;
          power_out = contact * (((s_r - u_r) * energy - p_r * u_r + p_star * contact) * d + p_star);
        } else {
          mass_out = rho_r * u_r;
          force_out = mass_out * u_r + p_r;
          power_out = u_r * (energy + p_r);
        }
        burnt_out = mass_out * (burnt_mid - burnt_slope);
      }
      mass_out *= areas[i];
      force_out *= areas[i];
      power_out *= areas[i];
      burnt_out *= areas[i];
    } else {
      mass_out = fluxes[4];
      force_out = fluxes[5];
      power_out = fluxes[6];
      burnt_out = fluxes[7];
    }

    const double per = dt * per_volumes[i];
    const double pace = rho * fabs(u);
    double rho_new = rho + per * (mass_in - mass_out);
    const double momentum = momenta[i] + per * (force_in - force_out + p_half * widenings[i]) - drag * pace * u;
    double energy = energies[i] + per * (power_in - power_out) +
                    warming * (pace + 3 * rho) * (wall_temperature - p * light * per_R);
    const double burnt_density = burnt_densities[i] + per * (burnt_in - burnt_out);
    if (!(rho_new > LEAST_DENSITY)) {
      rho_new = LEAST_DENSITY;
      floors++;
    }
    const double light_new = 1 / rho_new;
    const double u_new = momentum * light_new;
    double p_new = gamma_less_1 * (energy - 0.5 * momentum * u_new);
    if (!(p_new > LEAST_PRESSURE)) {
      p_new = LEAST_PRESSURE;
      energy = p_new * per_gamma_less_1 + 0.5 * momentum * u_new;
      floors++;
    }
    const double sound_new = sqrt(gamma * p_new * light_new);
    const double fastest = fabs(u_new) + sound_new;
    if (fastest > wave) wave = fastest;
    state[i] = rho_new;
    us[i] = u_new;
    ps[i] = p_new;
    burnts[i] = burnt_density * light_new;
    sounds[i] = sound_new;
    lights[i] = light_new;
    momenta[i] = momentum;
    energies[i] = energy;
    burnt_densities[i] = burnt_density;

    rho = rho_next;
    u = u_next;
    p = p_next;
    light = light_next;
    sound = sound_next;
    p_half = p_half_next;
    rho_l = rho_l_next;
    u_l = u_l_next;
    p_l = p_l_next;
    burnt_l = burnt_l_next;
    mass_in = mass_out;
    force_in = force_out;
    power_in = power_out;
    burnt_in = burnt_out;
  }
  pipe->wave = wave;
  pipe->floors += floors;
}

/* Nanoseconds that so many steps took. */
static double run(Pipe *pipe, int steps) {
  struct timespec from, to;
  fill(pipe);
  clock_gettime(CLOCK_MONOTONIC, &from);
  for (int n = 0; n < steps; n++) {
    const double dt = 0.8 * pipe->dx / pipe->wave;
    end_cell(pipe, dt, 1, -1, pipe->edges);
    end_cell(pipe, dt, pipe->cells, 1, pipe->edges + 8);
    wall(pipe, 1, pipe->edges, pipe->fluxes);
    wall(pipe, -1, pipe->edges + 8, pipe->fluxes + 4);
    advance(pipe, dt);
  }
  clock_gettime(CLOCK_MONOTONIC, &to);
  return (to.tv_sec - from.tv_sec) * 1e9 + (to.tv_nsec - from.tv_nsec);
}

static void print_state(const Pipe *pipe) {
  const int kept[] = {RHO, MOMENTUM, ENERGY, BURNT_DENSITY};
  for (int k = 0; k < 4; k++)
    for (int i = 1; i <= pipe->cells; i++) printf("%.17g ", pipe->state[kept[k] * (pipe->cells + 2) + i]);
  printf("\n");
}

int main(int count, char **arguments) {
  if (count != 2) return 2;
  Pipe pipe = made(atoi(arguments[1]));
  char line[64];
  int steps;
  while (fgets(line, sizeof line, stdin)) {
    if (sscanf(line, "run %d", &steps) == 1) printf("%.0f\n", run(&pipe, steps));
    else if (strncmp(line, "state", 5) == 0) print_state(&pipe);
    else return 2;
    fflush(stdout);
  }
  free(pipe.state);
  return 0;
}
