#include "core/wear/curvature.h"

#include <cmath>

namespace coilbook::wear {

EigenSystem jacobi(EtaMatrix a) {
    EtaMatrix v = EtaMatrix::Identity();
    constexpr int kMostSweeps = 60;
    for (int sweep = 0; sweep < kMostSweeps; ++sweep) {
        double off = 0.0;
        for (int p = 0; p < kEta; ++p) {
            for (int q = p + 1; q < kEta; ++q) {
                off += a(p, q) * a(p, q);
            }
        }
        if (off <= 1e-30 * a.squaredNorm()) {
            break;
        }
        for (int p = 0; p < kEta; ++p) {
            for (int q = p + 1; q < kEta; ++q) {
                if (a(p, q) == 0.0) {
                    continue;
                }
                const double th = (a(q, q) - a(p, p)) / (2.0 * a(p, q));
                const double t =
                    (th >= 0.0 ? 1.0 : -1.0) / (std::abs(th) + std::sqrt(th * th + 1.0));
                const double c = 1.0 / std::sqrt(t * t + 1.0);
                const double s = t * c;
                for (int i = 0; i < kEta; ++i) {
                    const double ip = a(i, p);
                    const double iq = a(i, q);
                    a(i, p) = c * ip - s * iq;
                    a(i, q) = s * ip + c * iq;
                }
                for (int i = 0; i < kEta; ++i) {
                    const double pi = a(p, i);
                    const double qi = a(q, i);
                    a(p, i) = c * pi - s * qi;
                    a(q, i) = s * pi + c * qi;
                }
                for (int i = 0; i < kEta; ++i) {
                    const double ip = v(i, p);
                    const double iq = v(i, q);
                    v(i, p) = c * ip - s * iq;
                    v(i, q) = s * ip + c * iq;
                }
            }
        }
    }
    return {v, a.diagonal()};
}

} // namespace coilbook::wear
