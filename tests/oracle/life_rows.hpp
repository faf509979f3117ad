// Published sets of failures and survivors with their Weibull fits.
#pragma once

#include <array>
#include <vector>

namespace camside::oracle {

struct LifeTime {
  double at;
  bool failed;
};

// Vehicle shock absorbers, km: "Statistical Methods for Reliability Data" (1998), p. 630. 38 units, 11 failures.
// (18450 is right; a script in circulation has 18420, and the digits of the fit tell.)
inline const std::vector<LifeTime> shock_absorbers{
    {6700, true},   {6950, false},  {7820, false},  {8790, false},  {9120, true},   {9660, false}, {9820, false},
    {11310, false}, {11690, false}, {11850, false}, {11880, false}, {12140, false}, {12200, true}, {12870, false},
    {13150, true},  {13330, false}, {13470, false}, {14040, false}, {14300, true},  {17520, true}, {17540, false},
    {17890, false}, {18450, false}, {18960, false}, {18980, false}, {19410, false}, {20100, true}, {20100, false},
    {20150, false}, {20320, false}, {20900, true},  {22700, true},  {23490, false}, {26510, true}, {27410, false},
    {27490, true},  {27890, false}, {28100, false}};

// A public package's fit of them, its printed digits: location ln η, scale σ = 1/β, their covariances, 90 % intervals.
// Its optimiser stopped at about 2e-6, so σ and its errors are held to 1e-5.
struct ShockFit {
  double location, scale;
  double var_location, covariance, var_scale;
  double log_likelihood;
};
inline constexpr ShockFit shock_fit{10.2298631, 0.3164092, 0.012075836, 0.003990396, 0.005353183, -123.9954};
// The same by another public program (R 4.2, package survival, stopped at 1e-14) and, from its fit, by hand: lives in
// km at 1, 10 and 50 %, mean, chance by 10,000 km, chance to reach 20,000 from 10,000 km, 95 % intervals.
struct ShockAgain {
  double location, scale, log_likelihood;
  double life_1, life_10, life_50;
  double by_10000, reach_20000_from_10000;
  double eta_low, eta_high, shape_low, shape_high;
};
inline constexpr ShockAgain shock_again{10.22986321, 0.3164086039, -123.9953612, 6466.152,  13600.035, 24683.625,
                                        0.0390841,   0.7286198,    22347.770,    34380.492, 2.008733,  4.972573};

// Adjusted ranks and median ranks of the same failures as the package prints them.
inline constexpr std::array<double, 11> shock_ranks{1.000000,  2.085714,  3.452910,  4.874794,  6.499803, 8.124813,
                                                    10.499828, 13.666514, 16.833199, 20.527666, 25.145750};
inline constexpr std::array<double, 11> shock_shares{0.0182292, 0.0465030, 0.0821070, 0.1191353, 0.1614532, 0.2037712,
                                                     0.2656205, 0.3480863, 0.4305521, 0.5267621, 0.6470247};
// Eleven failures and no survivor: the first, middle and last median rank.
inline constexpr std::array<double, 3> complete_shares{0.0614035, 0.5, 0.9385965};

// Numerical Algorithms Group library manual, example of g07be, all failed. Printed: ln λ = −2.1073 (s.e. 0.4627), shape
// 2.7870 (0.4273) in f = λ γ x^(γ−1) exp(−λ x^γ), so ln λ = −β ln η.
inline const std::vector<double> complete_sample{1.1, 1.4, 1.3, 1.7, 1.9, 1.8, 1.6, 2.2, 1.7, 2.7,
                                                 4.1, 1.8, 1.5, 1.2, 1.4, 3.0, 1.7, 2.3, 1.6, 2.0};
struct CompleteFit {
  double ln_lambda, ln_lambda_deviation, shape, shape_deviation;
};
inline constexpr CompleteFit complete_fit{-2.1073, 0.4627, 2.7870, 0.4273};

// A medical set of 26 in days that is widely used to check such fits (R, package survival, "ovarian"). Printed:
// intercept 7.111 (0.293), ln scale −0.103 (0.254), log-likelihood −98.
inline const std::vector<LifeTime> medical{
    {59, true},   {115, true},  {156, true},   {421, false},  {431, true},   {448, false},  {464, true},
    {475, true},  {477, false}, {563, true},   {638, true},   {744, false},  {769, false},  {770, false},
    {803, false}, {855, false}, {1040, false}, {1106, false}, {1129, false}, {1206, false}, {1227, false},
    {268, true},  {329, true},  {353, true},   {365, true},   {377, false}};
struct MedicalFit {
  double location, location_deviation, ln_scale, ln_scale_deviation, log_likelihood;
};
inline constexpr MedicalFit medical_fit{7.111, 0.293, -0.103, 0.254, -98.0};

// 95 % upper limits of a Poisson mean for 0 to 3 events, from tables of Poisson limits (from memory): 3.00, 4.74, 6.30,
// 7.75.
inline constexpr std::array<double, 4> poisson_limits{3.00, 4.74, 6.30, 7.75};

}  // namespace camside::oracle
