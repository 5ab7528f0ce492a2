// The textbook series of a body at one temperature that meets air of another: theta = (T - T_air) /
// (T_0 - T_air) in a wall, a long cylinder and a sphere. Carslaw HS, Jaeger JC, Conduction of Heat in
// Solids, 2nd ed. (1959), 3.11, 7.7, 9.4. An independent check: it shares nothing with the library.
#pragma once

#include <cmath>
#include <numbers>
#include <vector>

namespace leavenwright::testing {

enum class Body { wall, cylinder, sphere };

/// Its roots: z tan z = Bi, z J1(z) / J0(z) = Bi, 1 - z cot z = Bi, without poles.
inline double root_equation(Body body, double biot, double z) {
    switch (body) {
    case Body::wall:
        return z * std::sin(z) - biot * std::cos(z);
    case Body::cylinder:
        return z * std::cyl_bessel_j(1.0, z) - biot * std::cyl_bessel_j(0.0, z);
    case Body::sphere:
        return (1.0 - biot) * std::sin(z) - z * std::cos(z);
    }
    return 0.0;
}

/// The first `count` roots, by steps and bisection.
inline std::vector<double> roots_of(Body body, double biot, std::size_t count) {
    std::vector<double> roots;
    constexpr double step = 0.01;
    for (double left = 1e-4; roots.size() < count; left += step) {
        double low = left;
        double high = left + step;
        if (root_equation(body, biot, low) * root_equation(body, biot, high) > 0.0) {
            continue;
        }
        for (int i = 0; i < 60; ++i) {
            const double middle = (low + high) / 2.0;
            const bool is_below = root_equation(body, biot, low) * root_equation(body, biot, middle) > 0.0;
            (is_below ? low : high) = middle;
        }
        roots.push_back(low);
    }
    return roots;
}

/// What a root's term is multiplied by in the middle.
inline double amplitude(Body body, double z) {
    switch (body) {
    case Body::wall:
        return 4.0 * std::sin(z) / (2.0 * z + std::sin(2.0 * z));
    case Body::cylinder: {
        const double j0 = std::cyl_bessel_j(0.0, z);
        const double j1 = std::cyl_bessel_j(1.0, z);
        return 2.0 * j1 / (z * (j0 * j0 + j1 * j1));
    }
    case Body::sphere:
        return 4.0 * (std::sin(z) - z * std::cos(z)) / (2.0 * z - std::sin(2.0 * z));
    }
    return 0.0;
}

/// The mean of a term over the volume within x = r/R of the middle, of its value in the middle.
inline double mean_within(Body body, double z, double x) {
    const double y = z * x;
    switch (body) {
    case Body::wall:
        return std::sin(y) / y;
    case Body::cylinder:
        return 2.0 * std::cyl_bessel_j(1.0, y) / y;
    case Body::sphere:
        return 3.0 * (std::sin(y) - y * std::cos(y)) / (y * y * y);
    }
    return 0.0;
}

inline int dimensions(Body body) {
    return body == Body::wall ? 1 : body == Body::cylinder ? 2 : 3;
}

/// theta, averaged over the shell between the volume fractions v1 and v2, at Fo = alpha t / R2.
inline double shell_theta(Body body, const std::vector<double>& roots, double fourier, double v1, double v2) {
    const double power = 1.0 / dimensions(body);
    double sum = 0.0;
    for (const double z : roots) {
        const double inner = v1 > 0.0 ? v1 * mean_within(body, z, std::pow(v1, power)) : 0.0;
        const double outer = v2 * mean_within(body, z, std::pow(v2, power));
        sum += amplitude(body, z) * (outer - inner) / (v2 - v1) * std::exp(-z * z * fourier);
    }
    return sum;
}

} // namespace leavenwright::testing
